package send

import "time"

// window allows at most n events in any span of time of the given length.
type window struct {
	n    int
	span time.Duration
	seen []time.Time // the latest n, oldest first
}

// next gives the first moment, not before now, at which one more is allowed.
func (w *window) next(now time.Time) time.Time {
	if len(w.seen) < w.n {
		return now
	}
	free := w.seen[len(w.seen)-w.n].Add(w.span)
	if free.Before(now) {
		return now
	}
	return free
}

func (w *window) add(at time.Time) {
	w.seen = append(w.seen, at)
	if len(w.seen) > w.n {
		w.seen = w.seen[len(w.seen)-w.n:]
	}
}
