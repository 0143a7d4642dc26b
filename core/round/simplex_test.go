package round

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// The relaxation solved by shortest augmenting paths is the optimum that
// gonum's simplex finds for the same linear programme.
func TestRelaxationAgainstSimplex(t *testing.T) {
	solved := 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(13, seed))
		n, m := 2+r.IntN(5), 3+r.IntN(6)
		supply, room, cost := instance(r, n, m)
		cols := make([]column, m)
		for c := range cols {
			cols[c] = column{day: c, room: room[c]}
		}
		tr := newTransport(cols, cost)
		ours := 0.0
		for j := range supply {
			tr.send(j, supply[j])
		}
		for j := range supply {
			for c := range cols {
				if tr.flow[j][c] > 0 {
					ours += tr.flow[j][c] * cost[j][c]
				}
			}
		}
		theirs, err := simplex(supply, room, cost)
		require.NoError(t, err)
		require.InDelta(t, theirs, ours, 1e-6, "seed %d", seed)
		solved++
	}
	require.Equal(t, 60, solved)
}

// instance makes up a transport problem in which all can be sent.
func instance(r *rand.Rand, n, m int) (supply, room []float64, cost [][]float64) {
	total := 0.0
	for range n {
		s := 0.5 + 4*r.Float64()
		supply, total = append(supply, s), total+s
	}
	for range m {
		room = append(room, total/float64(m)*(1.05+r.Float64()))
	}
	for range n {
		row := make([]float64, m)
		for c := range row {
			row[c] = r.Float64()
		}
		cost = append(cost, row)
	}
	return supply, room, cost
}

// simplex states the problem in standard form: what is sent from each paddock
// is its supply; what comes to each column, with a slack, is its room.
func simplex(supply, room []float64, cost [][]float64) (float64, error) {
	n, m := len(supply), len(room)
	c := make([]float64, n*m+m)
	a := mat.NewDense(n+m, n*m+m, nil)
	b := make([]float64, n+m)
	for j := range n {
		b[j] = supply[j]
		for k := range m {
			c[j*m+k] = cost[j][k]
			a.Set(j, j*m+k, 1)
			a.Set(n+k, j*m+k, 1)
		}
	}
	for k := range m {
		b[n+k] = room[k]
		a.Set(n+k, n*m+k, 1)
	}
	best, _, err := lp.Simplex(c, a, b, 1e-10, nil)
	if err != nil {
		return math.NaN(), err
	}
	return best, nil
}
