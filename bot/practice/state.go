package practice

// state is what the events fold to. It has no lock: the server's guards it.
type state struct {
	seq      int64
	events   []Event
	people   []Person
	groups   map[int64]Group
	order    []int64 // groups as they were made
	chats    map[int64]*conversation
	pending  []Update
	updateID int64
	files    map[string]StoredFile
	queries  map[string]Press // button presses that await an answer
	commands map[string][]Command
	met      map[int64]bool // people who wrote to the bot in private
}

// conversation is one chat's messages, by id.
type conversation struct {
	last     int
	messages map[int]Message
}

func newState() *state {
	return &state{
		groups: map[int64]Group{}, chats: map[int64]*conversation{}, updateID: 1000,
		files: map[string]StoredFile{}, queries: map[string]Press{},
		commands: map[string][]Command{}, met: map[int64]bool{},
	}
}

// apply folds one event in.
func (st *state) apply(e Event) {
	st.seq = e.Seq
	st.events = append(st.events, e)
	switch e.Did {
	case DidPerson:
		st.people = append(st.people, *e.Person)
	case DidGroup:
		if _, known := st.groups[e.Group.ID]; !known {
			st.order = append(st.order, e.Group.ID)
		}
		st.groups[e.Group.ID] = *e.Group
	case DidSay, DidEdit, DidReact, DidDelete:
		st.put(*e.Message)
	case DidPress:
		st.queries[e.Press.QueryID] = *e.Press
	case DidToast:
		delete(st.queries, e.Press.QueryID)
	case DidUpdate:
		st.updateID = e.Update.ID
		st.pending = append(st.pending, *e.Update)
	case DidAck:
		st.acknowledge(e.Offset)
	case DidFile:
		st.files[e.File.ID] = *e.File
	case DidCommands:
		st.commands[e.Commands.Scope] = e.Commands.List
	}
}

func (st *state) put(m Message) {
	c := st.chat(m.Chat)
	c.messages[m.ID] = m
	c.last = max(c.last, m.ID)
	if m.Chat == m.From.ID {
		st.met[m.Chat] = true
	}
}

// chat gives the conversation, made when it is new.
func (st *state) chat(id int64) *conversation {
	c := st.chats[id]
	if c == nil {
		c = &conversation{messages: map[int]Message{}}
		st.chats[id] = c
	}
	return c
}

func (st *state) acknowledge(offset int64) {
	keep := st.pending[:0:0]
	for _, u := range st.pending {
		if u.ID >= offset {
			keep = append(keep, u)
		}
	}
	st.pending = keep
}

func (st *state) person(id int64) (Person, bool) {
	for _, p := range st.people {
		if p.ID == id {
			return p, true
		}
	}
	return Person{}, false
}

// message finds a message that has not been deleted.
func (st *state) message(chat int64, id int) (Message, bool) {
	c := st.chats[chat]
	if c == nil {
		return Message{}, false
	}
	m, ok := c.messages[id]
	return m, ok && !m.Gone
}
