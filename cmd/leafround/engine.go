package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"sync"
	"time"

	"leafround/bot"
	"leafround/bot/chat"
	"leafround/bot/intake"
	"leafround/bot/ledger"
	"leafround/bot/reply"
	"leafround/bot/sched"
	"leafround/bot/send"
	"leafround/bot/telegram"
)

// engine is the bot with all that drives it: intake, handling, jobs, sending.
// serve and demo run the same one.
type engine struct {
	book   *ledger.Ledger
	client *telegram.Client
	bot    *bot.Bot
	sched  *sched.Sched
	poller *intake.Poller
	loop   send.Loop
	bell   *ledger.Bell
	log    *slog.Logger
	o      engineOptions
}

// engineOptions are where serve and demo differ.
type engineOptions struct {
	token, server string
	pace          send.Limits
	now           func() time.Time
	observe       func(bot.Outcome)
	webhook       string // public address at which updates are brought; empty to poll
	weather       string // template of a weather service's address; empty for none
}

// newEngine makes the bot ready and asks the server who it is.
func newEngine(ctx context.Context, book *ledger.Ledger, o engineOptions, log *slog.Logger) (*engine, error) {
	if o.now == nil {
		o.now = time.Now
	}
	client, err := telegram.New(o.token, telegram.Options{ServerURL: o.server})
	if err != nil {
		return nil, err
	}
	e := &engine{book: book, client: client, log: log, o: o}
	me, err := e.introduce(ctx)
	if err != nil {
		return nil, err
	}
	e.bot = bot.New(book, bot.Options{Decode: telegram.Decode, Now: o.now, Log: log, Name: me, Observe: o.observe,
		Fetch: func(ctx context.Context, id string) ([]byte, error) { return client.Download(ctx, id, 20<<20) }})
	e.sched = sched.New(bot.Mornings{Bot: e.bot}, o.now, log)
	e.poller = &intake.Poller{URL: client.MethodURL("getUpdates"), Inbox: book, Log: log}
	e.bell = book.Bell(ledger.Outbox)
	e.loop = send.Loop{Bot: client, Rung: e.bell.Rung(), Pace: o.pace, Now: o.now, Log: log,
		Open: func(ctx context.Context) (send.Outbox, error) {
			s, err := book.Sender(ctx)
			if err != nil {
				return nil, err
			}
			return s, nil
		}}
	return e, nil
}

// introduce asks the server who the bot is, patiently where it can't be
// reached, and tells it which commands there are.
func (e *engine) introduce(ctx context.Context) (username string, err error) {
	for wait := time.Second; ; wait = min(2*wait, 30*time.Second) {
		_, username, err = e.client.Me(ctx)
		if err == nil || badToken(err) || ctx.Err() != nil {
			break
		}
		e.log.Warn("the Bot API can't be reached; trying again", "in", wait, "error", err)
		select {
		case <-ctx.Done():
			return "", ctx.Err()
		case <-time.After(wait):
		}
	}
	if err != nil {
		return "", err
	}
	if err := e.chooseWay(ctx); err != nil {
		return "", err
	}
	for who, list := range reply.Commands() {
		var commands []telegram.Command
		for _, c := range list {
			commands = append(commands, telegram.Command{Name: c.Name, Does: c.Does})
		}
		if err := e.client.SetCommands(ctx, telegram.Scope(who), commands); err != nil {
			e.log.Warn("the commands can't be registered", "error", err)
		}
	}
	return username, nil
}

// chooseWay tells the server whether it brings updates or is asked for them.
func (e *engine) chooseWay(ctx context.Context) error {
	if e.o.webhook != "" {
		if err := e.client.SetWebhook(ctx, e.o.webhook, secretOf(e.o.token), intake.Kinds); err != nil {
			return fmt.Errorf("the server does not take the webhook %s: it wants a public https address (%w)", e.o.webhook, err)
		}
		return nil
	}
	if err := e.client.ReadyToPoll(ctx); err != nil {
		e.log.Warn("a webhook that was set once can't be taken away", "error", err)
	}
	return nil
}

// secretOf gives the word by which the server proves that a call is its own.
func secretOf(token string) string {
	return fmt.Sprintf("%x", sha256.Sum256([]byte("webhook of "+token)))
}

// webhook takes updates that the server brings.
func (e *engine) webhook() http.Handler {
	return &intake.Webhook{Secret: secretOf(e.o.token), Inbox: e.book, Log: e.log}
}

// grace is how long the engine takes at most to finish what it holds.
const grace = 10 * time.Second

// run drives the bot until the context ends; then it takes in nothing more,
// handles what it has, sends what waits, and returns.
func (e *engine) run(ctx context.Context) error {
	defer e.bell.Close()
	last := context.WithoutCancel(ctx)
	handling, stopHandling := context.WithCancel(last)
	sending, stopSending := context.WithCancel(last)
	defer stopHandling()
	defer stopSending()
	var taking, working, out sync.WaitGroup
	if e.o.webhook == "" {
		taking.Go(func() { e.note("intake", e.poller.Run(ctx)) })
	}
	taking.Go(func() { e.note("jobs", e.sched.Run(ctx)) })
	taking.Go(func() { e.note("getting ready", e.bot.Warm(ctx)) })
	if e.o.weather != "" {
		taking.Go(func() { e.skywatch(ctx, e.o.weather, e.o.now) })
	}
	working.Go(func() { e.note("handling", e.bot.Run(handling)) })
	out.Go(func() { e.note("sending", e.loop.Run(sending)) })

	<-ctx.Done()
	taking.Wait()
	end, cancel := context.WithTimeout(last, grace)
	defer cancel()
	e.settle(end, func(w ledger.Waiting) bool { return w.Inbox == 0 })
	stopHandling()
	working.Wait()
	e.settle(end, func(w ledger.Waiting) bool { return w.Due == 0 })
	stopSending()
	out.Wait()
	return nil
}

// settle waits until the ledger holds nothing more of a kind, or the time is
// over: what is left is done at the next start.
func (e *engine) settle(ctx context.Context, done func(ledger.Waiting) bool) {
	for ctx.Err() == nil {
		w, err := e.book.Waiting(ctx)
		if err != nil || done(w) {
			return
		}
		select {
		case <-ctx.Done():
		case <-time.After(50 * time.Millisecond):
		}
	}
}

func (e *engine) note(what string, err error) {
	if err != nil {
		e.log.Error(fmt.Sprintf("%s has ended", what), "error", err)
	}
}

// badToken tells whether the server does not know the bot: no use in trying
// again.
func badToken(err error) bool {
	var e *chat.SendError
	return errors.As(err, &e) && e.Fate == chat.BadToken
}
