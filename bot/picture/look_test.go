package picture_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"leafround/bot/chat"
	"leafround/bot/picture"
	"leafround/core/entry"
)

var today = entry.NewDate(2026, 11, 25) // a Wednesday

// keep draws and keeps the picture under .artefacts.
func keep(t *testing.T, name string, d interface {
	Draw() (chat.Picture, error)
}) chat.Picture {
	t.Helper()
	p, err := d.Draw()
	require.NoError(t, err)
	dir := filepath.Join("..", "..", ".artefacts")
	require.NoError(t, os.MkdirAll(dir, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "picture-"+name+".png"), p.PNG, 0o644))
	t.Log(p.Caption)
	return p
}

// rows makes a farm of thirty paddocks in all stages, ours.
func rows() []picture.Row {
	names := []string{"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "14", "15", "16", "17", "18", "19", "20", "21", "22",
		"River 1", "River 2", "Top Flat", "House", "Dam", "Hill", "Back Hill", "Gully"}
	var out []picture.Row
	for i, n := range names {
		stage := math.Mod(0.35+float64(i)*0.437, 3.15)
		half := 0.18 + 0.3*math.Mod(float64(i)*0.31, 1)
		r := picture.Row{Paddock: n, Stage: stage, Low: stage - half, High: stage + half, From: 2, To: 3}
		if n == "14" || n == "Dam" {
			r.To = 2.5
		}
		switch {
		case stage >= r.To:
			r.Advice, r.ReadyOn = "late", today
		case stage >= r.From:
			r.Advice, r.ReadyOn = "ready", today
		default:
			r.Advice, r.ReadyOn = "wait", today.Add(int(math.Ceil((r.From-stage)*8.5)))
		}
		out = append(out, r)
	}
	out[6].Held = "silage"
	out[20].Held = "spray"
	out[9].Advice = "canopy"
	out[25] = picture.Row{Paddock: "House", Stage: math.NaN(), From: 2, To: 3, Advice: "unknown"}
	return out
}

func TestLookAtStages(t *testing.T) {
	keep(t, "stages-week", picture.Stages{Farm: "Totara Bend", Today: today, Rows: rows(), ByWeek: true})
	keep(t, "stages-order", picture.Stages{Farm: "Totara Bend", Today: today, Rows: rows()})
}

func TestLookAtTheOthers(t *testing.T) {
	keep(t, "pace", seasonPace())
	keep(t, "regrowth", regrowth())
	keep(t, "plan", plan())
	keep(t, "map", farmMap())
}
