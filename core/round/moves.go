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
	from, to := slices.Clone(o.seq[a]), []int(nil)
	if a == b {
		from = slices.Delete(from, i, i+1)
		if k > i {
			k--
		}
		from = slices.Insert(from, k, j)
		return o.try(a, min(i, k), from, a, 0, nil)
	}
	from = slices.Delete(from, i, i+1)
	to = slices.Insert(slices.Clone(o.seq[b]), k, j)
	return o.try(a, i, from, b, k, to)
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
	from := slices.Clone(o.seq[a])
	from[i] = y
	if a == b {
		from[k] = x
		return o.try(a, i, from, a, 0, nil)
	}
	to := slices.Clone(o.seq[b])
	to[k] = x
	return o.try(a, i, from, b, k, to)
}

// try puts new turns in the place of old ones, from places i and k on, and
// keeps them if the whole is cheaper.
func (o *order) try(a, i int, from []int, b, k int, to []int) bool {
	gain := o.tail(a, i) - o.trial(a, i, from, o.tail(a, i)+o.tailIf(b, k, a != b))
	if a != b {
		gain += o.tail(b, k) - o.trial(b, k, to, math.Inf(1))
	}
	if gain <= 1e-9 {
		return false
	}
	was := o.total()
	oldA, oldB := o.seq[a], o.seq[b]
	o.put(a, i, from)
	if a != b {
		o.put(b, k, to)
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

func (o *order) tailIf(c, k int, ok bool) float64 {
	if !ok {
		return 0
	}
	return o.tail(c, k)
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
		if len(seq) == len(o.seq[c]) && seq[p] == o.seq[c][p] && o.turns[c][p].end == at {
			return sum + o.tail(c, p+1) // the rest is as it was
		}
	}
	return sum
}
