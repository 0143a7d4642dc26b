package intake

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"strconv"
	"time"
)

// mostBytes is the most that one answer may have: 100 updates of 4,096
// characters with all their trimmings stay far below.
const mostBytes = 64 << 20

// serverError is a refusal by the server.
type serverError struct {
	code  int
	said  string
	after time.Duration
}

func (e *serverError) Error() string {
	switch e.code {
	case http.StatusConflict:
		return "another program gets this bot's updates, or a webhook is set: " + e.said
	case http.StatusUnauthorized:
		return "the server does not know the bot's token: " + e.said
	}
	return fmt.Sprintf("the server says %d %s", e.code, e.said)
}

// ask calls getUpdates once and gives each update as it came.
func (p *Poller) ask(ctx context.Context) ([][]byte, error) {
	body, kind := p.form()
	req, err := http.NewRequestWithContext(ctx, http.MethodPost, p.URL, body)
	if err != nil {
		return nil, errors.New("intake: the address of the Bot API is not one (LEAFROUND_API_URL)")
	}
	req.Header.Set("Content-Type", kind)
	resp, err := p.client.Do(req)
	if err != nil {
		return nil, fmt.Errorf("intake: getUpdates: %w", withoutURL(err))
	}
	defer resp.Body.Close()
	answer, err := io.ReadAll(io.LimitReader(resp.Body, mostBytes))
	if len(answer) == 0 && err != nil {
		return nil, fmt.Errorf("intake: getUpdates: %w", withoutURL(err))
	}
	return parse(answer, resp.StatusCode)
}

// form writes the call as the rest of the program does, as a multipart form.
func (p *Poller) form() (*bytes.Buffer, string) {
	var b bytes.Buffer
	w := multipart.NewWriter(&b)
	kinds, _ := json.Marshal(Kinds) // strings can't fail
	fields := map[string]string{"timeout": strconv.Itoa(int(p.Wait.Seconds())), "limit": "100", "allowed_updates": string(kinds)}
	if p.offset != 0 {
		fields["offset"] = strconv.FormatInt(p.offset, 10)
	}
	for name, value := range fields {
		w.WriteField(name, value) // a buffer takes all
	}
	w.Close()
	return &b, w.FormDataContentType()
}

// parse takes an answer apart. Where it is no JSON as a whole, what can be
// made out of its list is taken.
func parse(answer []byte, code int) ([][]byte, error) {
	var r struct {
		OK          bool              `json:"ok"`
		Result      []json.RawMessage `json:"result"`
		Description string            `json:"description"`
		Code        int               `json:"error_code"`
		Parameters  struct {
			After int `json:"retry_after"`
		} `json:"parameters"`
	}
	err := json.Unmarshal(answer, &r)
	switch {
	case err != nil && code == http.StatusOK:
		if batch := split(answer); len(batch) > 0 {
			return batch, nil
		}
		return nil, fmt.Errorf("intake: getUpdates: the answer can't be read: %w", err)
	case err != nil:
		return nil, &serverError{code: code, said: http.StatusText(code)}
	case !r.OK:
		if r.Code == 0 {
			r.Code = code
		}
		return nil, &serverError{r.Code, r.Description, time.Duration(r.Parameters.After) * time.Second}
	}
	batch := make([][]byte, len(r.Result))
	for i, raw := range r.Result {
		batch[i] = raw
	}
	return batch, nil
}

// withoutURL leaves out the address of a failed call: it holds the token.
func withoutURL(err error) error {
	var u *url.Error
	if errors.As(err, &u) {
		return u.Err
	}
	return err
}
