package practice

import (
	"bytes"
	"fmt"
	"image"
	_ "image/gif" // pictures' sizes
	_ "image/jpeg"
	_ "image/png"
	"mime"
	"net/http"
	"path"
	"strings"
)

// store keeps a file's content. The caller holds the lock.
func (s *Server) store(name string, content []byte, photo bool) File {
	f := File{ID: fmt.Sprintf("f%d", s.state.seq+1), Name: path.Base(name), Size: len(content), Photo: photo}
	f.Mime = mime.TypeByExtension(path.Ext(name))
	if f.Mime == "" {
		f.Mime = http.DetectContentType(content)
	}
	if config, _, err := image.DecodeConfig(bytes.NewReader(content)); photo && err == nil {
		f.Width, f.Height = config.Width, config.Height
	}
	s.record(Event{Did: DidFile, File: &StoredFile{f, content}})
	return f
}

// File gives a stored file by its id.
func (s *Server) File(id string) (StoredFile, bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	f, ok := s.state.files[id]
	return f, ok
}

func (s *Server) getFile(p params) (any, error) {
	f, ok := s.state.files[p.values["file_id"]]
	if !ok {
		return nil, badRequest("wrong file_id or the file is temporarily unavailable")
	}
	if f.Size > 20<<20 {
		return nil, badRequest("file is too big")
	}
	return object{"file_id": f.ID, "file_unique_id": "u" + f.ID, "file_size": f.Size,
		"file_path": "documents/" + f.ID + path.Ext(f.Name)}, nil
}

// serveFile serves /file/bot<token>/documents/<id>.<ext>.
func (s *Server) serveFile(w http.ResponseWriter, r *http.Request) {
	name, ok := strings.CutPrefix(r.URL.Path, "/file/bot"+s.options.Token+"/documents/")
	f, found := s.File(strings.TrimSuffix(name, path.Ext(name)))
	if !ok || !found {
		s.answer(w, nil, &apiError{Code: 404, Text: "Not Found"})
		return
	}
	w.Header().Set("Content-Type", "application/octet-stream")
	_, _ = w.Write(f.Content) // the caller has gone if this fails
}
