package telegram

import (
	"bytes"
	"context"
	"errors"
	"html"
	"regexp"

	"github.com/go-telegram/bot"
	"github.com/go-telegram/bot/models"

	"leafround/bot/chat"
)

// Send sends one thing and gives the number of the message that it became (or
// edited); 0 where it becomes none. An error is a [chat.SendError].
func (c *Client) Send(ctx context.Context, out chat.Outgoing) (int, error) {
	id, err := c.send(ctx, out)
	switch {
	case err == nil:
		return id, nil
	case refusal(err, "message is not modified"):
		return out.Edit, nil // it reads so already: a send whose answer was lost
	case out.Topic != 0 && refusal(err, "message thread not found", "topic_closed", "topic_deleted"):
		out.Topic = 0
		return c.Send(ctx, out)
	case out.HTML != "" && refusal(err, "can't parse entities"):
		return c.sendPlain(ctx, out)
	}
	return 0, c.classed(err)
}

func (c *Client) send(ctx context.Context, out chat.Outgoing) (int, error) {
	switch {
	case out.Answer != "" || out.AnswerTo != "":
		return c.answer(ctx, out)
	case out.React != "":
		return c.react(ctx, out)
	case out.Strip != 0:
		return c.strip(ctx, out)
	case out.Picture != nil && out.Edit == 0:
		return number(c.bot.SendPhoto(ctx, photo(out)))
	case out.Picture != nil:
		return number(c.bot.EditMessageMedia(ctx, newPhoto(out)))
	case out.Document != nil:
		return number(c.bot.SendDocument(ctx, document(out)))
	case out.Edit != 0:
		return number(c.bot.EditMessageText(ctx, edit(out)))
	case out.HTML != "":
		return number(c.bot.SendMessage(ctx, message(out)))
	}
	return 0, &chat.SendError{Fate: chat.GiveUp, Err: errNothing}
}

var errNothing = errors.New("telegram: there is nothing in it to send")

func number(m *models.Message, err error) (int, error) {
	if err != nil {
		return 0, err
	}
	return m.ID, nil
}

func message(out chat.Outgoing) *bot.SendMessageParams {
	return &bot.SendMessageParams{ChatID: out.Chat, MessageThreadID: out.Topic, Text: out.HTML,
		ParseMode: models.ParseModeHTML, LinkPreviewOptions: &models.LinkPreviewOptions{IsDisabled: bot.True()},
		ReplyParameters: reply(out), ReplyMarkup: keyboard(out)}
}

func edit(out chat.Outgoing) *bot.EditMessageTextParams {
	return &bot.EditMessageTextParams{ChatID: out.Chat, MessageID: out.Edit, Text: out.HTML,
		ParseMode: models.ParseModeHTML, LinkPreviewOptions: &models.LinkPreviewOptions{IsDisabled: bot.True()},
		ReplyMarkup: keyboard(out)}
}

func photo(out chat.Outgoing) *bot.SendPhotoParams {
	return &bot.SendPhotoParams{ChatID: out.Chat, MessageThreadID: out.Topic,
		Photo:   &models.InputFileUpload{Filename: "picture.png", Data: bytes.NewReader(out.Picture.PNG)},
		Caption: out.Picture.Caption, ParseMode: models.ParseModeHTML,
		ReplyParameters: reply(out), ReplyMarkup: keyboard(out)}
}

func newPhoto(out chat.Outgoing) *bot.EditMessageMediaParams {
	return &bot.EditMessageMediaParams{ChatID: out.Chat, MessageID: out.Edit, ReplyMarkup: keyboard(out),
		Media: &models.InputMediaPhoto{Media: "attach://picture.png", Caption: out.Picture.Caption,
			ParseMode: models.ParseModeHTML, MediaAttachment: bytes.NewReader(out.Picture.PNG)}}
}

func document(out chat.Outgoing) *bot.SendDocumentParams {
	return &bot.SendDocumentParams{ChatID: out.Chat, MessageThreadID: out.Topic,
		Document: &models.InputFileUpload{Filename: out.Document.Name, Data: bytes.NewReader(out.Document.Content)},
		Caption:  out.Document.Caption, ParseMode: models.ParseModeHTML,
		ReplyParameters: reply(out), ReplyMarkup: keyboard(out)}
}

// reply makes the message an answer to another, or none where that one is gone.
func reply(out chat.Outgoing) *models.ReplyParameters {
	if out.ReplyTo == 0 {
		return nil
	}
	return &models.ReplyParameters{MessageID: out.ReplyTo, AllowSendingWithoutReply: true}
}

// markup is an inline keyboard. The client's own type puts an empty copy_text
// beside the data of each button, and a button may have one of the two.
type markup struct {
	Rows [][]button `json:"inline_keyboard"`
}

type button struct {
	Text string `json:"text"`
	Data string `json:"callback_data"`
}

// keyboard gives the buttons; without any it must be a nil interface, which
// the client leaves out.
func keyboard(out chat.Outgoing) models.ReplyMarkup {
	if len(out.Buttons) == 0 {
		return nil
	}
	rows := make([][]button, len(out.Buttons))
	for i, row := range out.Buttons {
		for _, b := range row {
			rows[i] = append(rows[i], button{b.Label, b.Data})
		}
	}
	return markup{rows}
}

func (c *Client) answer(ctx context.Context, out chat.Outgoing) (int, error) {
	_, err := c.bot.AnswerCallbackQuery(ctx, &bot.AnswerCallbackQueryParams{CallbackQueryID: out.AnswerTo, Text: out.Answer})
	return 0, err
}

func (c *Client) react(ctx context.Context, out chat.Outgoing) (int, error) {
	_, err := c.bot.SetMessageReaction(ctx, &bot.SetMessageReactionParams{ChatID: out.Chat, MessageID: out.ReplyTo,
		Reaction: []models.ReactionType{{Type: models.ReactionTypeTypeEmoji,
			ReactionTypeEmoji: &models.ReactionTypeEmoji{Type: models.ReactionTypeTypeEmoji, Emoji: out.React}}}})
	return 0, err
}

func (c *Client) strip(ctx context.Context, out chat.Outgoing) (int, error) {
	_, err := c.bot.EditMessageReplyMarkup(ctx, &bot.EditMessageReplyMarkupParams{ChatID: out.Chat, MessageID: out.Strip})
	if refusal(err, "message is not modified") {
		err = nil
	}
	return 0, err
}

var tag = regexp.MustCompile(`<[^>]*>`)

// sendPlain sends a text whose markup the server can't read without it: a
// plain reply is better than none.
func (c *Client) sendPlain(ctx context.Context, out chat.Outgoing) (int, error) {
	text := html.UnescapeString(tag.ReplaceAllString(out.HTML, ""))
	var id int
	var err error
	if out.Edit != 0 {
		p := edit(out)
		p.Text, p.ParseMode = text, ""
		id, err = number(c.bot.EditMessageText(ctx, p))
	} else {
		p := message(out)
		p.Text, p.ParseMode = text, ""
		id, err = number(c.bot.SendMessage(ctx, p))
	}
	return id, c.classed(err)
}
