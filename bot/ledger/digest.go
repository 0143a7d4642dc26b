package ledger

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
)

// digest identifies an update's content: the order of keys and white space
// don't matter where it is JSON at all.
func digest(raw []byte) []byte {
	sum := sha256.Sum256(canonical(raw))
	return sum[:]
}

func canonical(raw []byte) []byte {
	d := json.NewDecoder(bytes.NewReader(raw))
	d.UseNumber()
	var v any
	if d.Decode(&v) != nil || d.More() {
		return raw
	}
	out, err := json.Marshal(v) // keys come out sorted
	if err != nil {
		return raw
	}
	return out
}
