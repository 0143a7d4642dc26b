package water

import "math"

// Air is what Penman–Monteith needs of a day: for farms whose station tells
// more than temperatures. The estimator reckons with Hargreaves.
type Air struct {
	Latitude, Altitude float64 // degrees; m
	YearDay            int
	Least, Most        float64 // °C
	Vapour             float64 // actual vapour pressure, kPa
	Wind               float64 // m/s at 2 m
	Sunshine           float64 // h
	SoilHeat           float64 // G, MJ m⁻² d⁻¹
}

// saturation gives the saturation vapour pressure, kPa, at a temperature (eq. 11).
func saturation(c float64) float64 { return 0.6108 * math.Exp(17.27*c/(c+237.3)) }

// Vapour gives the actual vapour pressure, kPa, from the day's least and most
// temperature and relative humidity in % (eq. 17).
func Vapour(least, most, dry, damp float64) float64 {
	return (saturation(least)*damp + saturation(most)*dry) / 200
}

// PenmanMonteith gives reference evapotranspiration ET0 in mm a day (eq. 6).
func PenmanMonteith(a Air) float64 {
	mean := (a.Least + a.Most) / 2
	pressure := 101.3 * math.Pow((293-0.0065*a.Altitude)/293, 5.26)      // eq. 7
	gamma := 0.665e-3 * pressure                                         // eq. 8
	slope := 4098 * saturation(mean) / ((mean + 237.3) * (mean + 237.3)) // eq. 13
	full := (saturation(a.Least) + saturation(a.Most)) / 2               // eq. 12
	net := a.net()
	return (0.408*slope*(net-a.SoilHeat) + gamma*900/(mean+273)*a.Wind*(full-a.Vapour)) /
		(slope + gamma*(1+0.34*a.Wind))
}

// net gives net radiation Rn in MJ m⁻² d⁻¹ (eqs 35, 37–40), with albedo 0.23 and
// the Ångström values 0.25 and 0.50.
func (a Air) net() float64 {
	const stefan = 4.903e-9 // MJ K⁻⁴ m⁻² d⁻¹
	ra := Radiation(a.Latitude, a.YearDay)
	solar := (0.25 + 0.50*a.Sunshine/Daylight(a.Latitude, a.YearDay)) * ra
	clear := (0.75 + 2e-5*a.Altitude) * ra
	fourth := func(c float64) float64 { return math.Pow(c+273.16, 4) }
	long := stefan * (fourth(a.Most) + fourth(a.Least)) / 2 *
		(0.34 - 0.14*math.Sqrt(a.Vapour)) * (1.35*min(solar/clear, 1) - 0.35)
	return 0.77*solar - long
}
