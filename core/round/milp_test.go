package round

import (
	"bufio"
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"leafround/core/entry"
)

var milp = flag.Bool("milp", false, "set the planner beside a general MILP solver (Debian's coinor-cbc), a minute an instance")

// slot is the part of a day in which the model counts time: stays are made to
// be whole numbers of slots, so that the model is exact.
const slot = 0.5

// halves makes up a farm whose stays last whole half days with any of its
// mobs: what invent makes, with areas and hectares a day rounded to that.
func halves(seed uint64, fields, mobs int) Problem {
	p := invent(rand.New(rand.NewPCG(15, seed)), fields, mobs)
	for m := range p.Mobs {
		p.Mobs[m].HaPerDay = []float64{4, 2, 4}[m]
	}
	for i := range p.Fields {
		p.Fields[i].Area = entry.Hectares(2 * max(1, math.Round(float64(p.Fields[i].Area)/2)))
	}
	return p
}

// The time-indexed model, as an LP file. Let x[j,m,t] be 1 when mob m begins
// paddock j in slot t, at the cost that the planner charges for that stay:
//
//	minimise  Σ cost[j,m,t] x[j,m,t]
//	each paddock once:            Σ_{m,t} x[j,m,t] = 1                       for each j
//	a mob in one paddock:         Σ_{j, s in (t-stay, t]} x[j,m,s] <= 1      for each m, t
//	no mob idle beside a paddock  busy[m,t] + Σ_{m', s<=t} x[j,m',s] >= 1    for each m, each j it
//	that it may graze:                                                       may graze, t >= free[j]
//
// where busy[m,t] is the sum of the second line. All x are binary; none exists
// after the latest start that the planner has proven.
type model struct {
	p      Problem
	g      *group
	rows   []string
	binary []string
	object []string
	begins [][][]string // by job, crew, slot: the variable, "" for none
	busy   [][][]string // by crew, slot: the variables of the stays that cover it
	end    int
}

func newModel(p Problem, g *group) *model {
	m := &model{p: p, g: g, end: int(float64(g.far)/slot) + 1}
	m.busy = make([][][]string, len(g.crews))
	for c := range m.busy {
		m.busy[c] = make([][]string, m.end+40)
	}
	for j := range g.jobs {
		m.begins = append(m.begins, make([][]string, len(g.crews)))
		for c, ok := range g.jobs[j].mobs {
			m.begins[j][c] = make([]string, m.end+1)
			if ok {
				m.starts(j, c)
			}
		}
	}
	m.once()
	m.apart()
	m.neverIdle()
	return m
}

func (m *model) starts(j, c int) {
	job, stay := &m.g.jobs[j], int(math.Round(m.g.stay(j, c)/slot))
	first := int(math.Round(max(job.free, m.g.crews[c].start) / slot))
	for t := first; t <= int(job.latest/slot+1e-6) && t < m.end; t++ {
		name := fmt.Sprintf("x%d_%d_%d", j, c, t)
		at := float64(t) * slot
		m.begins[j][c][t] = name
		m.binary = append(m.binary, name)
		m.object = append(m.object, fmt.Sprintf("%.9f %s", job.price(at, at+m.g.stay(j, c)), name))
		for s := t; s < t+stay; s++ {
			m.busy[c][s] = append(m.busy[c][s], name)
		}
	}
}

func (m *model) once() {
	for j := range m.begins {
		var all []string
		for c := range m.begins[j] {
			for _, x := range m.begins[j][c] {
				if x != "" {
					all = append(all, x)
				}
			}
		}
		m.rows = append(m.rows, strings.Join(all, " + ")+" = 1")
	}
}

func (m *model) apart() {
	for c := range m.busy {
		for _, xs := range m.busy[c] {
			if len(xs) > 1 {
				m.rows = append(m.rows, strings.Join(xs, " + ")+" <= 1")
			}
		}
	}
}

func (m *model) neverIdle() {
	for j := range m.g.jobs {
		job := &m.g.jobs[j]
		for c, ok := range job.mobs {
			first := int(math.Round(max(job.free, m.g.crews[c].start) / slot))
			for t := first; ok && t <= int(job.latest/slot); t++ {
				m.rows = append(m.rows, strings.Join(append(m.others(j, c, t), m.begun(j, t)...), " + ")+" >= 1")
			}
		}
	}
}

// others lists the stays of other jobs that keep a crew busy in a slot.
func (m *model) others(j, c, t int) (out []string) {
	own := fmt.Sprintf("x%d_", j)
	for _, x := range m.busy[c][t] {
		if !strings.HasPrefix(x, own) {
			out = append(out, x)
		}
	}
	return out
}

// begun lists the starts of a job up to a slot, by any crew.
func (m *model) begun(j, t int) (out []string) {
	for c := range m.begins[j] {
		for s := 0; s <= t && s < len(m.begins[j][c]); s++ {
			if x := m.begins[j][c][s]; x != "" {
				out = append(out, x)
			}
		}
	}
	return out
}

func (m *model) write(t *testing.T, path string) {
	t.Helper()
	f, err := os.Create(path)
	require.NoError(t, err)
	w := bufio.NewWriter(f)
	lines := func(sep string, parts []string) {
		for i, p := range parts {
			if i > 0 {
				_, _ = w.WriteString(sep)
			}
			_, _ = w.WriteString(p)
		}
		_, _ = w.WriteString("\n")
	}
	_, _ = w.WriteString("Minimize\n obj: ")
	lines("\n + ", m.object)
	_, _ = w.WriteString("Subject To\n")
	for i, row := range m.rows {
		_, _ = fmt.Fprintf(w, " r%d: %s\n", i, strings.ReplaceAll(row, " + ", "\n + "))
	}
	_, _ = w.WriteString("Binaries\n")
	lines("\n", m.binary)
	_, _ = w.WriteString("End\n")
	require.NoError(t, w.Flush())
	require.NoError(t, f.Close())
}

// cbc solves an LP file within so many seconds and gives the best cost found,
// +Inf for none, and whether it is proven the best.
func cbc(t *testing.T, path string, seconds int) (cost float64, proven bool, took time.Duration) {
	t.Helper()
	solution := path + ".sol"
	ctx, cancel := context.WithTimeout(context.Background(), time.Duration(2*seconds)*time.Second)
	defer cancel()
	start := time.Now()
	out, err := exec.CommandContext(ctx, "cbc", path, "-sec", fmt.Sprint(seconds), "-timeMode", "elapsed",
		"-solve", "-solu", solution).CombinedOutput()
	took = time.Since(start)
	if ctx.Err() != nil { // it did not come to an end in twice its time
		return math.Inf(1), false, took
	}
	require.NoError(t, err, "%s", out)
	text, err := os.ReadFile(solution)
	if err != nil {
		return math.Inf(1), false, took
	}
	head, _, _ := strings.Cut(string(text), "\n")
	_, value, found := strings.Cut(head, "objective value")
	if !found || strings.Contains(head, "no integer") {
		return math.Inf(1), false, took
	}
	_, err = fmt.Sscan(value, &cost)
	require.NoError(t, err)
	return cost, strings.HasPrefix(head, "Optimal"), took
}

// Side by side with a general MILP solver on the same instances, for growth
// given up alone.
func TestBesideAMILPSolver(t *testing.T) {
	if !*milp {
		t.Skip("a minute an instance: run with -milp")
	}
	if _, err := exec.LookPath("cbc"); err != nil {
		t.Skip("cbc is not installed (Debian: coinor-cbc)")
	}
	var table strings.Builder
	fmt.Fprintf(&table, "The planner beside a general MILP solver (cbc, 60 s) on the same instances:\n"+
		"a time-indexed model in half days, written out in core/round/milp_test.go; cost is\n"+
		"the share of growth given up. Our time is the processor's.\n"+
		"Command: go test ./core/round -run MILP -milp -update -timeout 60m\nDate: %s\n\n", time.Now().Format(time.DateOnly))
	fmt.Fprintf(&table, "%8s %5s %9s %9s | %9s %9s %9s | %10s %8s %9s | %9s\n", "paddocks", "mobs", "variables", "rows",
		"ours", "bound", "time", "MILP", "proven", "time", "times as fast")
	for k, size := range [][2]int{{12, 1}, {20, 1}, {12, 2}, {40, 1}, {60, 1}, {20, 2}, {40, 2}, {60, 3}} {
		p := halves(uint64(k), size[0], size[1])
		theirs, ours, low, area := 0.0, 0.0, 0.0, 0.0
		proven, seconds, vars, rows := true, 0.0, 0, 0
		begun := Plan{}
		crews := p.crews(&begun)
		took := best(func() {
			ours, low, area = 0, 0, 0
			for _, g := range p.groups(crews) {
				bare := g.bare()
				turns, bound, _ := p.order(bare, Plan{}, &Plan{rents: rents{}, bare: rents{}})
				ours, low, area = ours+bare.sum(turns), low+bound, area+g.area()
			}
			ours, low = ours/area, low/area
		})
		for _, g := range p.groups(crews) {
			m := newModel(p, g.bare())
			path := filepath.Join(t.TempDir(), "model.lp")
			m.write(t, path)
			cost, sure, d := cbc(t, path, 60)
			theirs, proven, seconds = theirs+cost/area, proven && sure, seconds+d.Seconds()
			vars, rows = vars+len(m.binary), rows+len(m.rows)
		}
		fmt.Fprintf(&table, "%8d %5d %9d %9d | %9.5f %9.5f %6.1f ms | %10.5f %8v %7.1f s | %9.0f\n", size[0], size[1], vars, rows,
			ours, low, took, theirs, proven, seconds, 1000*seconds/took)
		t.Log(table.String())
		require.Less(t, ours, theirs+0.005, "never worse by more than half a percent of growth")
		if proven {
			require.LessOrEqual(t, low, theirs+1e-6, "the bound is no bound")
		}
	}
	if *update {
		require.NoError(t, os.WriteFile("../../testdata/published/rotation-milp.txt", []byte(table.String()), 0o644))
	}
}
