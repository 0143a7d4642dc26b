package intake

import (
	"context"
	"crypto/subtle"
	"io"
	"log/slog"
	"net/http"
	"time"

	"leafround/bot/chat"
)

// Webhook takes updates that the server brings. It says 200 only when one is
// committed, so that the server brings it again otherwise.
type Webhook struct {
	Secret string // what the server was told to put into each call's header
	Inbox  Inbox
	Log    *slog.Logger     // nil for silence
	Now    func() time.Time // the wall clock if nil
}

// secretHeader is Telegram's (https://core.telegram.org/bots/api#setwebhook).
const secretHeader = "X-Telegram-Bot-Api-Secret-Token"

// mostUpdate is the most that one update may have, in bytes.
const mostUpdate = 8 << 20

// ServeHTTP takes one update.
func (h *Webhook) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodPost {
		http.Error(w, "POST only", http.StatusMethodNotAllowed)
		return
	}
	if subtle.ConstantTimeCompare([]byte(r.Header.Get(secretHeader)), []byte(h.Secret)) != 1 {
		http.Error(w, "wrong secret", http.StatusForbidden)
		return
	}
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, mostUpdate))
	if err != nil || len(body) == 0 {
		http.Error(w, "no update in it", http.StatusBadRequest)
		return
	}
	ctx, cancel := context.WithTimeout(context.WithoutCancel(r.Context()), commitTime)
	defer cancel()
	if err := h.Inbox.Receive(ctx, []chat.Raw{Read(body, h.now())}); err != nil {
		if h.Log != nil {
			h.Log.Error("an update could not be kept; the server will bring it again", "error", err)
		}
		http.Error(w, "could not be kept", http.StatusServiceUnavailable)
		return
	}
	w.WriteHeader(http.StatusOK)
}

func (h *Webhook) now() time.Time {
	if h.Now != nil {
		return h.Now()
	}
	return time.Now()
}
