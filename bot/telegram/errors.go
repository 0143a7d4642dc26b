package telegram

import (
	"context"
	"errors"
	"strings"
	"time"

	"github.com/go-telegram/bot"

	"leafround/bot/chat"
)

// classed gives an error its fate, nil for nil. What is not clearly a refusal
// is tried again: a lost connection, a server in trouble, an answer that is no
// JSON.
func (c *Client) classed(err error) error {
	if err == nil {
		return nil
	}
	var done *chat.SendError
	if errors.As(err, &done) {
		return done
	}
	out := &chat.SendError{Fate: chat.Retry, Err: c.hidden(err)}
	var many *bot.TooManyRequestsError
	var moved *bot.MigrateError
	switch {
	case errors.As(err, &many):
		out.After = time.Duration(many.RetryAfter) * time.Second
	case errors.As(err, &moved):
		out.Fate, out.NewChat = chat.Moved, int64(moved.MigrateToChatID)
	case errors.Is(err, bot.ErrorUnauthorized):
		out.Fate = chat.BadToken
	case errors.Is(err, bot.ErrorForbidden), errors.Is(err, bot.ErrorBadRequest), errors.Is(err, bot.ErrorNotFound):
		out.Fate = chat.GiveUp
	case errors.Is(err, context.Canceled):
		out.Err = err
	}
	return out
}

// refusal tells whether the server refused for a reason that it puts in these
// words (the Bot API has no codes for them).
func refusal(err error, words ...string) bool {
	if !errors.Is(err, bot.ErrorBadRequest) {
		return false
	}
	said := strings.ToLower(err.Error())
	for _, w := range words {
		if strings.Contains(said, w) {
			return true
		}
	}
	return false
}
