package send

import "time"

// Limits is how many may be sent in a span of time.
type Limits struct {
	All, Chat, Group Limit
}

// Limit allows N in any span; the zero Limit allows all.
type Limit struct {
	N    int
	Span time.Duration
}

// Telegram gives the limits that Telegram names for a bot: 30 messages a
// second in all, one a second to a chat, 20 a minute to a group
// (https://core.telegram.org/bots/faq#my-bot-is-hitting-limits-how-do-i-avoid-this).
// The spans are a little longer than told, since sends arrive less evenly
// than they leave (ours).
func Telegram() Limits {
	return Limits{
		All:   Limit{30, 1050 * time.Millisecond},
		Chat:  Limit{1, 1050 * time.Millisecond},
		Group: Limit{20, 60500 * time.Millisecond},
	}
}

// Unpaced gives no limits, for a server of one's own.
func Unpaced() Limits { return Limits{} }

// pacer keeps the limits.
type pacer struct {
	limits Limits
	all    window
	chats  map[int64]*lane
}

// lane is one chat's way.
type lane struct {
	chat, group window
	hold        time.Time // nothing before: the server told to wait
}

func newPacer(l Limits) *pacer {
	return &pacer{limits: l, all: window{n: l.All.N, span: l.All.Span}, chats: map[int64]*lane{}}
}

func (p *pacer) lane(chat int64) *lane {
	l := p.chats[chat]
	if l == nil {
		l = &lane{chat: window{n: p.limits.Chat.N, span: p.limits.Chat.Span},
			group: window{n: p.limits.Group.N, span: p.limits.Group.Span}}
		p.chats[chat] = l
	}
	return l
}

// next gives the first moment at which a chat may be sent to.
func (p *pacer) next(chat int64, group bool, now time.Time) time.Time {
	l := p.lane(chat)
	at := later(now, l.hold)
	if p.limits.All.N > 0 {
		at = later(at, p.all.next(now))
	}
	if p.limits.Chat.N > 0 {
		at = later(at, l.chat.next(now))
	}
	if group && p.limits.Group.N > 0 {
		at = later(at, l.group.next(now))
	}
	return at
}

// leave counts a send against the whole when it leaves; arrive counts it
// against its chat when it is over, so that two never arrive closer together
// than they may.
func (p *pacer) leave(at time.Time) {
	if p.limits.All.N > 0 {
		p.all.add(at)
	}
}

func (p *pacer) arrive(chat int64, at time.Time) {
	l := p.lane(chat)
	if p.limits.Chat.N > 0 {
		l.chat.add(at)
	}
	if p.limits.Group.N > 0 {
		l.group.add(at)
	}
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
