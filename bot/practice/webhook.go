package practice

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"strings"
	"time"
)

// webhook brings updates to the bot, one at a time and in order, instead of
// waiting to be asked. It is not kept in the journal: a bot sets it at start.
type webhook struct {
	url, secret string
	cancel      context.CancelFunc
	failed      string // what the last delivery met
}

var errHooked = &apiError{Code: 409, Text: "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first"}

// webhookPause is how long the server waits before it brings an update again.
const webhookPause = 250 * time.Millisecond

func (s *Server) setWebhook(p params) (any, error) {
	url := p.values["url"]
	if url == "" {
		return s.deleteWebhook(p)
	}
	// Telegram takes https alone; loopback has no need of it.
	if !strings.HasPrefix(url, "https://") && !strings.HasPrefix(url, "http://") {
		return nil, badRequest("bad webhook: An HTTPS URL must be provided for webhook")
	}
	s.unhook()
	s.allow(p)
	if p.bool("drop_pending_updates") {
		s.record(Event{Did: DidAck, Offset: s.state.updateID + 1})
	}
	ctx, cancel := context.WithCancel(context.Background())
	s.hook = &webhook{url: url, secret: p.values["secret_token"], cancel: cancel}
	go s.bring(ctx, s.hook)
	return true, nil
}

func (s *Server) deleteWebhook(p params) (any, error) {
	s.unhook()
	if p.bool("drop_pending_updates") {
		s.record(Event{Did: DidAck, Offset: s.state.updateID + 1})
	}
	return true, nil
}

// unhook ends the webhook. The caller holds the lock.
func (s *Server) unhook() {
	if s.hook != nil {
		s.hook.cancel()
		s.hook = nil
	}
}

func (s *Server) getWebhookInfo(params) (any, error) {
	info := object{"url": "", "has_custom_certificate": false, "pending_update_count": len(s.state.pending)}
	if s.hook != nil {
		info["url"] = s.hook.url
		if s.hook.failed != "" {
			info["last_error_message"] = s.hook.failed
		}
	}
	return info, nil
}

// bring brings updates until the webhook ends: each until the bot says 200, and
// once more where every update is to be handed over twice.
func (s *Server) bring(ctx context.Context, h *webhook) {
	for ctx.Err() == nil {
		u, changed, ok := s.oldest()
		if !ok {
			select {
			case <-changed:
			case <-ctx.Done():
			}
			continue
		}
		said := h.deliver(ctx, u.Raw)
		s.mu.Lock()
		h.failed = said
		if said == "" {
			s.forget(u.ID + 1)
		}
		s.mu.Unlock()
		if said != "" {
			select {
			case <-time.After(webhookPause):
			case <-ctx.Done():
			}
		}
	}
}

// oldest takes the update that has waited longest.
func (s *Server) oldest() (Update, <-chan struct{}, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.state.pending) == 0 {
		return Update{}, s.changed, false
	}
	u := s.state.pending[0]
	s.handed[u.ID]++
	return u, s.changed, true
}

// deliver posts one update; it gives what went wrong, or nothing.
func (h *webhook) deliver(ctx context.Context, raw json.RawMessage) string {
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, h.url, bytes.NewReader(raw))
	if err != nil {
		return err.Error()
	}
	r.Header.Set("Content-Type", "application/json")
	if h.secret != "" {
		r.Header.Set("X-Telegram-Bot-Api-Secret-Token", h.secret)
	}
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		return err.Error()
	}
	defer answer.Body.Close()
	if answer.StatusCode/100 != 2 {
		return "Wrong response from the webhook: " + answer.Status
	}
	return ""
}
