package intake

import "bytes"

// split cuts the list behind "result" into its objects by their braces alone,
// for an answer that is no JSON as a whole: one broken update must not hide
// the others. An object that does not end is left out; the server has it
// still.
func split(answer []byte) (objects [][]byte) {
	_, rest, found := bytes.Cut(answer, []byte(`"result"`))
	open := bytes.IndexByte(rest, '[')
	if !found || open < 0 {
		return nil
	}
	rest = rest[open+1:]
	for {
		begin := bytes.IndexAny(rest, "{]")
		if begin < 0 || rest[begin] == ']' {
			return objects
		}
		end := objectEnd(rest[begin:])
		if end < 0 {
			return objects
		}
		objects = append(objects, bytes.Clone(rest[begin:begin+end]))
		rest = rest[begin+end:]
	}
}

// objectEnd gives the length of the object at the start of b, -1 where it does
// not end. Braces within strings don't count.
func objectEnd(b []byte) int {
	depth, quoted := 0, false
	for i := 0; i < len(b); i++ {
		switch c := b[i]; {
		case quoted && c == '\\':
			i++
		case c == '"':
			quoted = !quoted
		case quoted:
		case c == '{':
			depth++
		case c == '}':
			depth--
			if depth == 0 {
				return i + 1
			}
		}
	}
	return -1
}
