package round

import (
	"math"
	"slices"
)

// improve moves paddocks about until no single move helps, or the bound is
// reached within the tolerance: a swap of two, or one taken out and put in
// elsewhere, within a mob's turns or between two mobs.
func (o *order) improve(goal float64, passes int) {
	for range passes {
		if !o.pass(goal) {
			return
		}
	}
}

// pass tries every move once and tells whether one was made.
func (o *order) pass(goal float64) bool {
	moved := false
	for a := range o.seq {
		for b := range o.seq {
			for i := 0; i < len(o.seq[a]); i++ {
				if o.total() <= goal {
					return false
				}
				for k := 0; k <= len(o.seq[b]) && i < len(o.seq[a]); k++ {
					if o.insert(a, i, b, k) || o.swap(a, i, b, k) {
						moved = true
					}
				}
			}
		}
	}
	return moved
}

// insert takes the job at place i of crew a and puts it at place k of crew b,
// if that helps.
func (o *order) insert(a, i, b, k int) bool {
	j := o.seq[a][i]
	if !o.g.jobs[j].mobs[b] || a == b && (k == i || k == i+1) {
		return false
	}
	from := append(append(o.spare[0][:0], o.seq[a][:i]...), o.seq[a][i+1:]...)
	if a == b {
		if k > i {
			k--
		}
		o.spare[0] = slices.Insert(from, k, j)
		return o.try(a, min(i, k), o.spare[0], a, 0, nil)
	}
	o.spare[0] = from
	o.spare[1] = append(append(append(o.spare[1][:0], o.seq[b][:k]...), j), o.seq[b][k:]...)
	return o.try(a, i, from, b, k, o.spare[1])
}

// swap changes the job at place i of crew a for that at place k of crew b.
func (o *order) swap(a, i, b, k int) bool {
	if k >= len(o.seq[b]) || a == b && k <= i || a > b {
		return false
	}
	x, y := o.seq[a][i], o.seq[b][k]
	if !o.g.jobs[x].mobs[b] || !o.g.jobs[y].mobs[a] {
		return false
	}
	o.spare[0] = append(o.spare[0][:0], o.seq[a]...)
	o.spare[0][i] = y
	if a == b {
		o.spare[0][k] = x
		return o.try(a, i, o.spare[0], a, 0, nil)
	}
	o.spare[1] = append(o.spare[1][:0], o.seq[b]...)
	o.spare[1][k] = x
	return o.try(a, i, o.spare[0], b, k, o.spare[1])
}

// try puts new turns in the place of old ones, from places i and k on, and
// keeps them if the whole is cheaper. The new turns are copied.
func (o *order) try(a, i int, from []int, b, k int, to []int) bool {
	now := o.tail(a, i)
	if a != b {
		now += o.tail(b, k)
	}
	then := o.trial(a, i, from, now)
	if a != b && then < now {
		then += o.trial(b, k, to, now-then)
	}
	if then >= now-1e-9 {
		return false
	}
	was := o.total()
	oldA, oldB := o.seq[a], o.seq[b]
	o.put(a, i, slices.Clone(from))
	if a != b {
		o.put(b, k, slices.Clone(to))
	}
	if o.total() < was-1e-9 {
		return true
	}
	o.put(a, i, oldA)
	if a != b {
		o.put(b, k, oldB)
	}
	return false
}

func (o *order) put(c, k int, seq []int) {
	o.seq[c] = seq
	o.settle(c, k)
}

// tail gives what a crew's turns cost from place k on.
func (o *order) tail(c, k int) float64 {
	return o.cost[c][len(o.cost[c])-1] - o.cost[c][k]
}

// trial gives what the turns would cost from place k on; it stops early once
// that is more than the most worth knowing.
func (o *order) trial(c, k int, seq []int, most float64) float64 {
	at, sum := o.g.crews[c].start, 0.0
	if k > 0 {
		at = o.turns[c][k-1].end
	}
	for p := k; p < len(seq) && sum <= most; p++ {
		job := &o.g.jobs[seq[p]]
		s := math.Max(at, job.free)
		at = s + o.g.stay(seq[p], c)
		sum += job.price(s, at)
		if len(seq) == len(o.seq[c]) && seq[p] == o.seq[c][p] && math.Abs(o.turns[c][p].end-at) < 1e-9 {
			return sum + o.tail(c, p+1) // the rest is as it was
		}
	}
	return sum
}
