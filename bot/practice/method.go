package practice

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strings"
)

// apiError is an error as the Bot API tells it.
type apiError struct {
	Code       int
	Text       string
	RetryAfter int   // seconds, with 429
	MovedTo    int64 // the chat's new id
}

func (e *apiError) Error() string { return fmt.Sprintf("%d %s", e.Code, e.Text) }

func badRequest(format string, args ...any) error {
	return &apiError{Code: 400, Text: "Bad Request: " + fmt.Sprintf(format, args...)}
}

// method is one Bot API method. It is called with the lock held, except
// getUpdates, which waits.
type method func(*Server, params) (any, error)

// methods are the Bot API methods that the server knows, in lower case: as at
// Telegram, case does not matter.
var methods = map[string]method{
	"getme":                  (*Server).getMe,
	"sendmessage":            (*Server).sendMessage,
	"sendphoto":              (*Server).sendPhoto,
	"senddocument":           (*Server).sendDocument,
	"editmessagetext":        (*Server).editMessageText,
	"editmessagecaption":     (*Server).editMessageCaption,
	"editmessagemedia":       (*Server).editMessageMedia,
	"editmessagereplymarkup": (*Server).editMessageReplyMarkup,
	"answercallbackquery":    (*Server).answerCallbackQuery,
	"setmessagereaction":     (*Server).setMessageReaction,
	"deletemessage":          (*Server).deleteMessage,
	"setmycommands":          (*Server).setMyCommands,
	"getmycommands":          (*Server).getMyCommands,
	"deletemycommands":       (*Server).deleteMyCommands,
	"getfile":                (*Server).getFile,
	"getchat":                (*Server).getChat,
	"getchatmember":          (*Server).getChatMember,
	"getchatadministrators":  (*Server).getChatAdministrators,
	"getchatmembercount":     (*Server).getChatMemberCount,
	"sendchataction":         (*Server).sendChatAction,
	"setwebhook":             (*Server).setWebhook,
	"deletewebhook":          (*Server).deleteWebhook,
	"getwebhookinfo":         (*Server).getWebhookInfo,
	"setmydescription":       func(*Server, params) (any, error) { return true, nil },
	"setmyshortdescription":  func(*Server, params) (any, error) { return true, nil },
	"logout":                 func(*Server, params) (any, error) { return true, nil },
	"close":                  func(*Server, params) (any, error) { return true, nil },
}

func (s *Server) serveMethod(w http.ResponseWriter, r *http.Request) {
	token, name, ok := strings.Cut(strings.TrimPrefix(r.URL.Path, "/bot"), "/")
	if !ok || !strings.HasPrefix(r.URL.Path, "/bot") {
		s.answer(w, nil, &apiError{Code: 404, Text: "Not Found"})
		return
	}
	if token != s.options.Token {
		s.answer(w, nil, &apiError{Code: 401, Text: "Unauthorized"})
		return
	}
	p, err := readParams(r)
	if err != nil {
		s.answer(w, nil, badRequest("%v", err))
		return
	}
	result, err, done := s.callWithFaults(w, r, name, p)
	if !done {
		s.answer(w, result, err)
	}
}

// call runs a method.
func (s *Server) call(ctx context.Context, name string, p params) (any, error) {
	if strings.EqualFold(name, "getUpdates") {
		return s.getUpdates(ctx, p)
	}
	m, ok := methods[strings.ToLower(name)]
	if !ok {
		return nil, &apiError{Code: 404, Text: "Not Found: method not found"}
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	result, err := m(s, p)
	if s.failure != nil {
		return nil, &apiError{Code: 500, Text: "Internal Server Error: " + s.failure.Error()}
	}
	return result, err
}

// answer writes the body that the Bot API answers with.
func (s *Server) answer(w http.ResponseWriter, result any, err error) {
	body := object{"ok": true, "result": result}
	status := http.StatusOK
	var failed *apiError
	if errors.As(err, &failed) {
		status = failed.Code
		body = object{"ok": false, "error_code": failed.Code, "description": failed.Text}
		if failed.RetryAfter > 0 {
			body["parameters"] = object{"retry_after": failed.RetryAfter}
		}
		if failed.MovedTo != 0 {
			body["parameters"] = object{"migrate_to_chat_id": failed.MovedTo}
		}
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	// The caller has gone if this fails: there is nobody to tell.
	_ = json.NewEncoder(w).Encode(body)
}
