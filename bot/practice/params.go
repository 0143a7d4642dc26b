package practice

import (
	"encoding/json"
	"fmt"
	"io"
	"mime"
	"net/http"
	"strconv"
)

// maxUpload is the largest upload taken: the Bot API's own 50 MB.
const maxUpload = 50 << 20

// params are a call's parameters, however they were sent: query, form,
// multipart form or JSON.
type params struct {
	values map[string]string
	files  map[string]upload
}

type upload struct {
	name    string
	content []byte
}

func readParams(r *http.Request) (params, error) {
	p := params{map[string]string{}, map[string]upload{}}
	for k, v := range r.URL.Query() {
		p.values[k] = v[0]
	}
	kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	var err error
	switch kind {
	case "application/json":
		err = p.readJSON(r.Body)
	case "multipart/form-data":
		err = p.readMultipart(r)
	default:
		if err = r.ParseForm(); err == nil {
			for k, v := range r.PostForm {
				p.values[k] = v[0]
			}
		}
	}
	return p, err
}

func (p params) readJSON(body io.Reader) error {
	var raw map[string]json.RawMessage
	if err := json.NewDecoder(io.LimitReader(body, maxUpload)).Decode(&raw); err != nil && err != io.EOF {
		return fmt.Errorf("practice: decode the call: %w", err)
	}
	for k, v := range raw {
		var text string
		if json.Unmarshal(v, &text) == nil {
			p.values[k] = text
			continue
		}
		p.values[k] = string(v)
	}
	return nil
}

func (p params) readMultipart(r *http.Request) error {
	form, err := r.MultipartReader()
	if err != nil {
		return fmt.Errorf("practice: read the form: %w", err)
	}
	for first := true; ; first = false {
		part, err := form.NextPart()
		if err == io.EOF {
			return nil
		}
		if err != nil && first {
			return nil // a call without parameters is sent as a form without a single part
		}
		if err != nil {
			return fmt.Errorf("practice: read the form: %w", err)
		}
		content, err := io.ReadAll(io.LimitReader(part, maxUpload))
		if err != nil {
			return fmt.Errorf("practice: read part %s: %w", part.FormName(), err)
		}
		if part.FileName() != "" {
			p.files[part.FormName()] = upload{part.FileName(), content}
		} else {
			p.values[part.FormName()] = string(content)
		}
	}
}

func (p params) int64(name string) int64 {
	n, _ := strconv.ParseInt(p.values[name], 10, 64)
	return n
}

func (p params) int(name string) int { return int(p.int64(name)) }

func (p params) bool(name string) bool {
	b, _ := strconv.ParseBool(p.values[name])
	return b
}

// json reads a parameter that holds JSON; false where it is not there or
// cannot be read.
func (p params) json(name string, into any) bool {
	v := p.values[name]
	return v != "" && json.Unmarshal([]byte(v), into) == nil
}
