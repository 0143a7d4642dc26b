package water_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"leafround/core/pace/water"
)

// FAO-56, example 8: 3 September (day 246) at 20° S: dr 0.985, δ 0.120 rad, ωs
// 1.527 rad, Ra 32.2 MJ m⁻² d⁻¹. Example 9: daylight 11.7 h.
func TestSunAt20South(t *testing.T) {
	s := water.SunOn(-20, 246)
	assert.InDelta(t, 0.985, s.Distance, 0.0005)
	assert.InDelta(t, 0.120, s.Declination, 0.0005)
	assert.InDelta(t, 1.527, s.Sunset, 0.0005)
	assert.InDelta(t, 32.2, water.Radiation(-20, 246), 0.05)
	assert.InDelta(t, 11.7, water.Daylight(-20, 246), 0.05)
}

// FAO-56, example 20: Lyon (45.72° N), July (day 196), 26.6 and 14.8 °C:
// 5.0 mm a day by Hargreaves.
func TestHargreavesAtLyon(t *testing.T) {
	assert.InDelta(t, 5.0, water.Hargreaves(14.8, 26.6, water.Radiation(45.72, 196)), 0.05)
}

// FAO-56, example 17: Bangkok (13.73° N), April (day 105): Tmax 34.8, Tmin
// 25.6 °C, ea 2.85 kPa, u2 2 m/s, 8.5 h of sun, March 29.2 °C: 5.72 mm a day.
func TestPenmanMonteithAtBangkok(t *testing.T) {
	got := water.PenmanMonteith(water.Air{Latitude: 13 + 44.0/60, Altitude: 2, YearDay: 105,
		Least: 25.6, Most: 34.8, Vapour: 2.85, Wind: 2, Sunshine: 8.5, SoilHeat: 0.14 * (30.2 - 29.2)})
	assert.InDelta(t, 5.72, got, 0.03)
}

// FAO-56, example 18: Uccle (50.80° N, 100 m), 6 July (day 187): Tmax 21.5, Tmin
// 12.3 °C, humidity 84 and 63 %, wind 10 km/h at 10 m (2.078 m/s at 2 m), 9.25 h
// of sun: 3.9 mm a day (3.88 unrounded).
func TestPenmanMonteithAtUccle(t *testing.T) {
	vapour := water.Vapour(12.3, 21.5, 63, 84)
	assert.InDelta(t, 1.409, vapour, 0.001)
	got := water.PenmanMonteith(water.Air{Latitude: 50.80, Altitude: 100, YearDay: 187,
		Least: 12.3, Most: 21.5, Vapour: vapour, Wind: 2.078, Sunshine: 9.25})
	assert.InDelta(t, 3.88, got, 0.02)
}

// θFC 0.32, θWP 0.15, Zr 0.5 m, ETc 4 mm: TAW 85 mm, p 0.64, RAW 54.4 mm; Ks at a
// depletion of 65 mm: 0.654 (ours, by FAO-56 eqs 82–84 and Table 22).
func TestStress(t *testing.T) {
	taw, p := water.TotalAvailable(0.32, 0.15, 0.5), water.Depletable(0.60, 4)
	assert.InDelta(t, 85, taw, 1e-9)
	assert.InDelta(t, 0.64, p, 1e-9)
	assert.InDelta(t, 54.4, p*taw, 1e-9)
	assert.InDelta(t, 0.654, water.Stress(65, taw, p), 0.0005)
	assert.Equal(t, 1.0, water.Stress(54.4, taw, p))
	assert.Equal(t, 0.0, water.Stress(85, taw, p))
	assert.Equal(t, 0.8, water.Depletable(0.75, 0))
	assert.Equal(t, 0.1, water.Depletable(0.2, 9))
}

// The store by hand (ours): rain above what it holds drains; drying slows once
// RAW is used up and never passes TAW.
func TestBucket(t *testing.T) {
	b := water.Bucket{TAW: 85, P: 0.60, Depletion: 10}
	b.Day(25, 3)
	assert.Zero(t, b.Depletion)
	b.Day(0, 4)
	assert.InDelta(t, 4, b.Depletion, 1e-9)
	assert.Equal(t, 1.0, b.Stress())
	for range 14 {
		b.Day(0, 4)
	}
	assert.InDelta(t, 60-4*(1-water.Stress(56, 85, 0.64)), b.Depletion, 1e-9, "the fifteenth day at a little under 4 mm")
	for range 400 {
		b.Day(0, 4)
	}
	assert.LessOrEqual(t, b.Depletion, 85.0)
	assert.InDelta(t, 0, b.Stress(), 0.01)
}

// Beyond the polar circles the sun may not rise or set.
func TestPolarDays(t *testing.T) {
	assert.InDelta(t, 24, water.Daylight(75, 172), 1e-9)
	assert.InDelta(t, 0, water.Daylight(75, 355), 1e-9)
	assert.InDelta(t, 0, water.Radiation(75, 355), 1e-9)
	assert.Zero(t, water.Hargreaves(-30, -25, 5))
}
