package bot

import (
	"fmt"
	"strings"

	"leafround/bot/chat"
	"leafround/bot/reply"
	"leafround/core/entry"
	"leafround/parser"
)

// strange handles a message in a chat that speaks of no farm yet: one is set
// up, or the sender hears how; talk is left alone.
func (t *turn) strange() error {
	t.at = t.in.SentAt
	r := parser.Read(t.in.Text, parser.Context{Now: t.at, AnyPaddock: true})
	for _, e := range r.Entries {
		if s, ok := e.(entry.Setup); ok && s.What == entry.SetFarm {
			return t.found(s, r)
		}
	}
	if t.in.Private {
		return t.choose()
	}
	if r.Ask != nil && len(r.Ask.Options) == 0 && startsSetup(t.in.Text) {
		return t.refuse(r.Ask.Reason)
	}
	if r.Ignored || t.in.Text == "" {
		return nil
	}
	return t.refuse(reply.NoFarm())
}

// startsSetup tells whether a text tries to set a farm up.
func startsSetup(text string) bool {
	folded := entry.FoldName(text)
	return strings.HasPrefix(folded, "setup")
}

// found makes a farm of a chat; who set it up manages it.
func (t *turn) found(s entry.Setup, r entry.Reading) error {
	row, err := t.tx.NewFarm(t.ctx, s.Name, s.Zone)
	if err != nil {
		return err
	}
	if err := t.tx.SetChatFarm(t.ctx, t.chat.ID, row.ID); err != nil {
		return err
	}
	if err := t.tx.SetMessageFarm(t.ctx, t.msg.ID, row.ID); err != nil {
		return err
	}
	if _, err := t.tx.Meet(t.ctx, row.ID, t.in.From.ID, t.in.From.Name); err != nil {
		return err
	}
	if err := t.tx.SetManager(t.ctx, row.ID, t.in.From.ID, true); err != nil {
		return err
	}
	if err := t.enter(row.ID); err != nil {
		return err
	}
	return t.log(r)
}

// choose asks somebody in a private chat which of their farms they mean, or
// tells who is on none where to begin.
func (t *turn) choose() error {
	farms, err := t.tx.FarmsOf(t.ctx, t.in.From.ID)
	if err != nil {
		return err
	}
	if len(farms) == 0 {
		return t.refuse(reply.Unknown())
	}
	t.say("You are on more than one farm: which one do you mean here?")
	out := t.compose()
	for _, f := range farms {
		out.Buttons = append(out.Buttons, []chat.Button{{Label: f.Name, Data: fmt.Sprintf("farm:%d:%d", f.ID, t.msg.ID)}})
	}
	_, err = t.send(t.msg, out)
	return err
}

// otherFarm tells whether somebody in a private chat wants to speak of another
// of their farms.
func otherFarm(text string) bool {
	switch entry.FoldName(text) {
	case "otherfarm", "switchfarm", "changefarm", "whichfarm":
		return true
	}
	return false
}

// joined greets a group that the bot was added to.
func (t *turn) joined() error {
	var err error
	if t.chat, err = t.tx.MeetChat(t.ctx, t.in.Chat, t.in.Private, t.in.Title); err != nil {
		return err
	}
	if t.in.Private || t.chat.Farm != 0 {
		return nil
	}
	t.say(reply.Welcome())
	_, err = t.send(t.msg, t.compose())
	return err
}

// left notes that the bot was removed from a chat: nothing is sent there.
func (t *turn) left() error {
	if _, err := t.tx.MeetChat(t.ctx, t.in.Chat, t.in.Private, t.in.Title); err != nil {
		return err
	}
	return t.tx.ChatGone(t.ctx, t.in.Chat, true)
}

// media meets a photo, a sticker, a voice note: silence among people, a
// sentence to who speaks to the bot alone.
func (t *turn) media() error {
	if !t.in.Private || t.in.Media == "" {
		return nil
	}
	return t.refuse("I can only read text: type what you counted, for instance p12 2 2.5 2.")
}
