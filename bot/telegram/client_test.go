package telegram

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"path"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
)

const token = "123:SECRET"

// call is one call of the Bot API, as the server got it.
type call struct {
	method string
	fields map[string]string
	file   string // content of the uploaded file
}

// server answers calls one after the other with the given bodies, the last
// one for all that follow.
func server(t *testing.T, calls *[]call, status int, bodies ...string) *Client {
	t.Helper()
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		c := call{method: path.Base(r.URL.Path), fields: map[string]string{}}
		if r.ParseMultipartForm(1<<20) == nil {
			for k, v := range r.MultipartForm.Value {
				c.fields[k] = v[0]
			}
			for _, f := range r.MultipartForm.File {
				file, _ := f[0].Open()
				b, _ := io.ReadAll(file)
				c.file = string(b)
			}
		}
		*calls = append(*calls, c)
		w.WriteHeader(status)
		io.WriteString(w, bodies[min(len(*calls), len(bodies))-1])
	}))
	t.Cleanup(s.Close)
	c, err := New(token, Options{ServerURL: s.URL + "/", Timeout: 5 * time.Second})
	require.NoError(t, err)
	return c
}

const okMessage = `{"ok":true,"result":{"message_id":55,"date":1,"chat":{"id":-100,"type":"group"}}}`

func TestSend(t *testing.T) {
	for name, c := range map[string]struct {
		out    chat.Outgoing
		method string
		id     int
		fields map[string]string
		file   string
		answer string
	}{
		"reply with buttons": {
			out:    chat.Outgoing{Chat: -100, Topic: 3, ReplyTo: 5, HTML: `"<b>12</b>"`, Buttons: [][]chat.Button{{{Label: "Undo", Data: "undo 1"}}}},
			method: "sendMessage", id: 55,
			fields: map[string]string{"chat_id": "-100", "message_thread_id": "3", "text": `"<b>12</b>"`, "parse_mode": "HTML",
				"link_preview_options": `{"is_disabled":true}`,
				"reply_parameters":     `{"message_id":5,"allow_sending_without_reply":true}`,
				"reply_markup":         `{"inline_keyboard":[[{"text":"Undo","callback_data":"undo 1"}]]}`},
		},
		"edit without buttons": {
			out: chat.Outgoing{Chat: -100, Edit: 55, HTML: "13"}, method: "editMessageText", id: 55,
			fields: map[string]string{"chat_id": "-100", "message_id": "55", "text": "13", "parse_mode": "HTML", "link_preview_options": `{"is_disabled":true}`},
		},
		"picture": {
			out: chat.Outgoing{Chat: -100, ReplyTo: 5, Picture: &chat.Picture{PNG: []byte("png"), Caption: "Stages"}}, method: "sendPhoto", id: 55, file: "png",
			fields: map[string]string{"chat_id": "-100", "caption": "Stages", "parse_mode": "HTML", "reply_parameters": `{"message_id":5,"allow_sending_without_reply":true}`},
		},
		"document": {
			out: chat.Outgoing{Chat: -100, Document: &chat.Document{Name: "log.csv", Content: []byte("id\n")}}, method: "sendDocument", id: 55, file: "id\n",
			fields: map[string]string{"chat_id": "-100", "parse_mode": "HTML"},
		},
		"reaction": {
			out: chat.Outgoing{Chat: -100, ReplyTo: 5, React: "👍"}, method: "setMessageReaction", answer: `{"ok":true,"result":true}`,
			fields: map[string]string{"chat_id": "-100", "message_id": "5", "reaction": `[{"type":"emoji","emoji":"👍"}]`},
		},
		"answer to a press": {
			out: chat.Outgoing{Chat: -100, AnswerTo: "q", Answer: "Only Ana can"}, method: "answerCallbackQuery", answer: `{"ok":true,"result":true}`,
			fields: map[string]string{"callback_query_id": "q", "text": "Only Ana can"},
		},
		"buttons taken off": {
			out: chat.Outgoing{Chat: -100, Strip: 55}, method: "editMessageReplyMarkup",
			fields: map[string]string{"chat_id": "-100", "message_id": "55"},
		},
	} {
		var calls []call
		answer := c.answer
		if answer == "" {
			answer = okMessage
		}
		id, err := server(t, &calls, 200, answer).Send(t.Context(), c.out)
		require.NoError(t, err, name)
		require.Equal(t, c.id, id, name)
		require.Equal(t, []call{{c.method, c.fields, c.file}}, calls, name)
	}
}

func TestFates(t *testing.T) {
	for _, c := range []struct {
		status int
		body   string
		want   chat.SendError
	}{
		{429, `{"ok":false,"error_code":429,"description":"Too Many Requests: retry after 7","parameters":{"retry_after":7}}`, chat.SendError{Fate: chat.Retry, After: 7 * time.Second}},
		{400, `{"ok":false,"error_code":400,"description":"Bad Request: group chat was upgraded","parameters":{"migrate_to_chat_id":-1001234567890}}`, chat.SendError{Fate: chat.Moved, NewChat: -1001234567890}},
		{400, `{"ok":false,"error_code":400,"description":"Bad Request: chat not found"}`, chat.SendError{Fate: chat.GiveUp}},
		{403, `{"ok":false,"error_code":403,"description":"Forbidden: bot was kicked"}`, chat.SendError{Fate: chat.GiveUp}},
		{404, `{"ok":false,"error_code":404,"description":"Not Found"}`, chat.SendError{Fate: chat.GiveUp}},
		{401, `{"ok":false,"error_code":401,"description":"Unauthorized"}`, chat.SendError{Fate: chat.BadToken}},
		{500, `{"ok":false,"error_code":500,"description":"Internal Server Error"}`, chat.SendError{Fate: chat.Retry}},
		{409, `{"ok":false,"error_code":409,"description":"Conflict"}`, chat.SendError{Fate: chat.Retry}},
		{502, `<html>Bad Gateway</html>`, chat.SendError{Fate: chat.Retry}},
		{200, `{"ok":tr`, chat.SendError{Fate: chat.Retry}},
	} {
		var calls []call
		_, err := server(t, &calls, c.status, c.body).Send(t.Context(), chat.Outgoing{Chat: -100, HTML: "x"})
		var got *chat.SendError
		require.ErrorAs(t, err, &got, c.body)
		require.NotContains(t, err.Error(), "SECRET")
		require.Equal(t, c.want, chat.SendError{Fate: got.Fate, After: got.After, NewChat: got.NewChat}, c.body)
		require.Len(t, calls, 1, c.body)
	}
}

func TestALostConnectionIsTriedAgainAndHidesTheToken(t *testing.T) {
	c, err := New(token, Options{ServerURL: "http://127.0.0.1:1"})
	require.NoError(t, err)
	_, err = c.Send(t.Context(), chat.Outgoing{Chat: -100, HTML: "x"})
	var got *chat.SendError
	require.ErrorAs(t, err, &got)
	require.Equal(t, chat.Retry, got.Fate)
	require.NotContains(t, err.Error(), "SECRET")
	_, err = c.Download(t.Context(), "f", 10)
	require.Error(t, err)
	require.NotContains(t, err.Error(), "SECRET")
}

func refused(words string) string {
	b, _ := json.Marshal(map[string]any{"ok": false, "error_code": 400, "description": "Bad Request: " + words})
	return string(b)
}

func TestWhatCanBeMendedIsSentOtherwise(t *testing.T) {
	var calls []call
	c := server(t, &calls, 400, refused("message is not modified: specified new message content is the same"))
	id, err := c.Send(t.Context(), chat.Outgoing{Chat: -100, Edit: 55, HTML: "13"})
	require.NoError(t, err, "it reads so already")
	require.Equal(t, 55, id)

	calls = nil
	c = server(t, &calls, 200, refused("message thread not found"), okMessage)
	id, err = c.Send(t.Context(), chat.Outgoing{Chat: -100, Topic: 3, HTML: "13"})
	require.NoError(t, err)
	require.Equal(t, 55, id)
	require.NotContains(t, calls[1].fields, "message_thread_id")

	calls = nil
	c = server(t, &calls, 200, refused("can't parse entities: unclosed tag"), okMessage)
	_, err = c.Send(t.Context(), chat.Outgoing{Chat: -100, ReplyTo: 5, HTML: "<b>12 &lt; 13"})
	require.NoError(t, err)
	require.Equal(t, "12 < 13", calls[1].fields["text"])
	require.NotContains(t, calls[1].fields, "parse_mode")
	require.Contains(t, calls[1].fields, "reply_parameters")
}

func TestAWrongTokenIsOnePlainSentence(t *testing.T) {
	for _, body := range []string{`{"ok":false,"error_code":401,"description":"Unauthorized"}`, `{"ok":false,"error_code":404,"description":"Not Found"}`} {
		var calls []call
		_, _, err := server(t, &calls, 401, body).Me(t.Context())
		var got *chat.SendError
		require.ErrorAs(t, err, &got)
		require.Equal(t, chat.BadToken, got.Fate)
		require.Contains(t, err.Error(), "does not know this token")
	}
	for _, bad := range []string{"", "  ", "a b", "x/../y"} {
		_, err := New(bad, Options{})
		require.ErrorContains(t, err, "LEAFROUND_TOKEN")
	}
}

func TestACallThatIsBrokenOffIsNoRefusal(t *testing.T) {
	var calls []call
	c := server(t, &calls, 200, okMessage)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := c.Send(ctx, chat.Outgoing{Chat: -100, HTML: "x"})
	require.True(t, errors.Is(err, context.Canceled))
}
