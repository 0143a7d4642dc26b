package practice

import "strings"

// The Bot API's limits, in UTF-16 units after the markup is read.
const (
	maxText    = 4096
	maxCaption = 1024
	maxData    = 64 // bytes of a button's data
)

func (s *Server) sendMessage(p params) (any, error) {
	m, err := s.outgoing(p, "text", maxText)
	if err != nil {
		return nil, err
	}
	if strings.TrimSpace(m.Text) == "" {
		return nil, badRequest("message text is empty")
	}
	return s.deliver(m), nil
}

func (s *Server) sendPhoto(p params) (any, error) { return s.sendUpload(p, "photo", true) }

func (s *Server) sendDocument(p params) (any, error) { return s.sendUpload(p, "document", false) }

// sendUpload sends a file that comes along, or one known by its id.
func (s *Server) sendUpload(p params, field string, photo bool) (any, error) {
	m, err := s.outgoing(p, "caption", maxCaption)
	if err != nil {
		return nil, err
	}
	f, err := s.uploaded(p, field, photo)
	if err != nil {
		return nil, err
	}
	m.File = &f
	return s.deliver(m), nil
}

// uploaded gives the file of a call: one that comes along, or a known one.
func (s *Server) uploaded(p params, field string, photo bool) (File, error) {
	up, ok := p.files[field]
	if inner, named := strings.CutPrefix(p.values[field], "attach://"); named {
		up, ok = p.files[inner]
	}
	if !ok {
		known, found := s.state.files[p.values[field]]
		if !found {
			return File{}, badRequest("there is no %s in the request", field)
		}
		return known.File, nil
	}
	if len(up.content) == 0 {
		return File{}, badRequest("file must be non-empty")
	}
	f := s.store(up.name, up.content, photo)
	if photo && f.Width == 0 {
		return f, badRequest("IMAGE_PROCESS_FAILED")
	}
	return f, nil
}

// outgoing reads what every sending method has in common.
func (s *Server) outgoing(p params, field string, limit int) (Message, error) {
	m := Message{Chat: p.int64("chat_id"), From: s.Self(), Topic: p.int("message_thread_id")}
	if err := s.mayWrite(m.Chat); err != nil {
		return m, err
	}
	if err := s.setText(&m, p, field, limit); err != nil {
		return m, err
	}
	if err := setButtons(&m, p); err != nil {
		return m, err
	}
	return m, s.setReply(&m, p)
}

// mayWrite tells whether the bot may write to a chat.
func (s *Server) mayWrite(chat int64) error {
	if g, ok := s.state.groups[chat]; ok {
		switch {
		case g.MovedTo != 0:
			return &apiError{Code: 400, Text: "Bad Request: group chat was upgraded to a supergroup chat", MovedTo: g.MovedTo}
		case g.Kicked:
			return &apiError{Code: 403, Text: "Forbidden: bot was kicked from the supergroup chat"}
		}
		return nil
	}
	if _, ok := s.state.person(chat); !ok {
		return badRequest("chat not found")
	}
	if !s.state.met[chat] {
		return &apiError{Code: 403, Text: "Forbidden: bot can't initiate conversation with a user"}
	}
	return nil
}

// setText reads the text or caption with its markup.
func (s *Server) setText(m *Message, p params, field string, limit int) error {
	m.Text, m.HTML = p.values[field], ""
	switch p.values["parse_mode"] {
	case "":
	case "HTML", "html":
		read, err := parseHTML(m.Text)
		if err != nil {
			return badRequest("can't parse entities: %v", err)
		}
		m.HTML, m.Text = m.Text, read.Text
	default:
		return badRequest("unsupported parse_mode")
	}
	if units(m.Text) > limit && field == "caption" {
		return badRequest("message caption is too long")
	}
	if units(m.Text) > limit {
		return badRequest("message is too long")
	}
	return nil
}

// setButtons reads an inline keyboard; none takes the buttons away.
func setButtons(m *Message, p params) error {
	var markup struct {
		Rows [][]Button `json:"inline_keyboard"`
	}
	m.Buttons = nil
	if v := p.values["reply_markup"]; v == "" || v == "null" {
		return nil
	}
	if !p.json("reply_markup", &markup) {
		return badRequest("can't parse reply keyboard markup JSON object")
	}
	for _, row := range markup.Rows {
		for _, b := range row {
			if len(b.Data) > maxData || (b.Data == "" && b.URL == "") {
				return badRequest("BUTTON_DATA_INVALID")
			}
			if b.Text == "" {
				return badRequest("can't parse inline keyboard button: Text buttons must have non-empty text")
			}
		}
		if len(row) > 0 {
			m.Buttons = append(m.Buttons, row)
		}
	}
	return nil
}

// setReply reads which message is answered; the topic follows it.
func (s *Server) setReply(m *Message, p params) error {
	var reply struct {
		MessageID int  `json:"message_id"`
		Without   bool `json:"allow_sending_without_reply"`
	}
	reply.MessageID = p.int("reply_to_message_id")
	p.json("reply_parameters", &reply)
	if reply.MessageID == 0 {
		return nil
	}
	answered, ok := s.state.message(m.Chat, reply.MessageID)
	if !ok {
		if reply.Without {
			return nil
		}
		return badRequest("message to be replied not found")
	}
	m.ReplyTo = reply.MessageID
	if m.Topic == 0 {
		m.Topic = answered.Topic
	}
	return nil
}

// deliver puts the bot's message into its chat.
func (s *Server) deliver(m Message) any {
	m.ID, m.At = s.state.chat(m.Chat).last+1, s.now()
	s.record(Event{Did: DidSay, Message: &m})
	return s.wireMessage(m, true)
}
