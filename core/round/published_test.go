package round

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// published reads a table of testdata/published: a row of what can be taken in
// each column, then a row a supply with its costs; "-" is not allowed. The
// optimum stands in the last row.
func published(t *testing.T, name string) (room []float64, supply []float64, cost [][]float64, best float64) {
	t.Helper()
	f, err := os.Open("../../testdata/published/" + name)
	require.NoError(t, err)
	defer func() { _ = f.Close() }()
	r := csv.NewReader(f)
	r.Comment, r.FieldsPerRecord = '#', -1
	rows, err := r.ReadAll()
	require.NoError(t, err)
	for _, row := range rows {
		numbers := make([]float64, len(row)-1)
		for i, cell := range row[1:] {
			if numbers[i] = math.Inf(1); cell != "-" {
				numbers[i], err = strconv.ParseFloat(cell, 64)
				require.NoError(t, err)
			}
		}
		switch row[0] {
		case "room":
			room = numbers
		case "best":
			best = numbers[0]
		default:
			supply, cost = append(supply, numbers[0]), append(cost, numbers[1:])
		}
	}
	return room, supply, cost, best
}

// The transport problem at the heart of the bound finds the optima of worked
// examples in print; the file names the source.
func TestPublishedOptima(t *testing.T) {
	for _, name := range []string{"assignment-machines.csv", "assignment-transport.csv"} {
		room, supply, cost, best := published(t, name)
		cols := make([]column, len(room))
		for c, r := range room {
			cols[c] = column{day: c, room: r}
		}
		tr := newTransport(cols, cost)
		for j, s := range supply {
			tr.send(j, s)
		}
		sum, dual := 0.0, 0.0
		for j := range supply {
			sent, cheapest := 0.0, math.Inf(1)
			for c := range cols {
				if tr.flow[j][c] > 0 {
					sum += tr.flow[j][c] * cost[j][c]
				}
				sent += tr.flow[j][c]
				cheapest = math.Min(cheapest, cost[j][c]+tr.price[c])
			}
			require.InDelta(t, supply[j], sent, 1e-9, name)
			dual += supply[j] * cheapest
		}
		for c := range cols {
			dual -= tr.price[c] * cols[c].room
		}
		require.InDelta(t, best, sum, 1e-6, name)
		require.InDelta(t, best, dual, 1e-6, "the prices prove the optimum: %s", name)
	}
}
