package play

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"leafround/bot/chat"
	"leafround/bot/practice"
	"leafround/bot/script"
)

func rawOf(u chat.Raw) []chat.Raw { return []chat.Raw{u} }

// do does on the practice server what the script's message says.
func (p *Player) do(ctx context.Context, m *script.Message) error {
	who := p.server.AddPerson(m.Name)
	_, met := p.people[m.Name]
	p.people[m.Name] = who
	where := p.where(m, who)
	if m.Manager && !met {
		p.chosen[who] = where
	}
	if err := p.appoint(ctx); err != nil {
		return err
	}
	switch {
	case m.Press > 0:
		return p.press(m, where, who)
	case m.Edit > 0:
		to := p.said[m.Edit]
		if _, ok := p.server.Edit(to.chat, to.id, m.Text); !ok {
			return fmt.Errorf("message %d is none that can be edited", m.Edit)
		}
		p.said[m.Index] = to
		return nil
	}
	var with []practice.With
	if m.Reply > 0 {
		with = append(with, practice.ReplyTo(p.said[m.Reply].id))
	}
	var id int
	switch {
	case m.Pin != nil:
		id, _ = p.server.Pin(where, who, m.Pin[0], m.Pin[1], with...)
	case m.File != "":
		content, err := p.read(m.File)
		if err != nil {
			return err
		}
		id, _ = p.server.SendFile(where, who, filepath.Base(m.File), content, m.Text, with...)
	default:
		id, _ = p.server.Say(where, who, m.Text, with...)
	}
	p.said[m.Index] = spoken{where, id}
	return nil
}

// where gives the chat in which a message is written.
func (p *Player) where(m *script.Message, who practice.Person) int64 {
	if m.Private {
		return who.ID
	}
	if _, ok := p.groups[m.Group]; !ok {
		p.groups[m.Group] = p.server.AddGroup(practice.Group{Title: fmt.Sprintf("Group %d", m.Group)})
	}
	return p.groups[m.Group]
}

// read reads a file that the script names: beside the script, or else where
// the program runs.
func (p *Player) read(name string) ([]byte, error) {
	path := name
	if !filepath.IsAbs(name) {
		path = filepath.Join(p.o.Dir, name)
		if _, err := os.Stat(path); err != nil {
			path = name
		}
	}
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("the file %s can't be read: %w", name, err)
	}
	return b, nil
}

// press presses a button of the bot's last message in the chat.
func (p *Player) press(m *script.Message, where int64, who practice.Person) error {
	said := p.server.FromBot(where)
	for i := len(said) - 1; i >= 0; i-- {
		if len(said[i].Buttons) == 0 {
			continue
		}
		if _, ok := p.server.PressButton(where, who, said[i].ID, m.Press-1); !ok {
			return fmt.Errorf("the bot's last message has no button %d", m.Press)
		}
		p.said[m.Index] = spoken{where, said[i].ID}
		return nil
	}
	return fmt.Errorf("no message of the bot's has buttons here")
}

// appoint makes the people whom the script calls managers what they are, as
// soon as their farm is set up.
func (p *Player) appoint(ctx context.Context) error {
	for who, where := range p.chosen {
		done, err := p.bot.Appoint(ctx, where, who.ID, who.Name)
		if err != nil {
			return err
		}
		if done {
			delete(p.chosen, who)
		}
	}
	return nil
}
