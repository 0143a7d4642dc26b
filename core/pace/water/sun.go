package water

import "math"

// solarConstant is 0.0820 MJ m⁻² min⁻¹ (FAO-56, eq. 21).
const solarConstant = 0.0820

// Sun is the geometry of one day at one latitude.
type Sun struct {
	Distance    float64 // dr, inverse relative distance earth–sun (eq. 23)
	Declination float64 // δ, rad (eq. 24)
	Sunset      float64 // ωs, sunset hour angle, rad (eq. 25)
}

// SunOn gives the geometry for a latitude in degrees (south negative) and the
// number of the day in the year (1 to 366). Where the sun does not set, or rise,
// the angle is π, or 0.
func SunOn(latitude float64, yearDay int) Sun {
	turn := 2 * math.Pi * float64(yearDay) / 365
	s := Sun{Distance: 1 + 0.033*math.Cos(turn), Declination: 0.409 * math.Sin(turn-1.39)}
	x := -math.Tan(latitude*math.Pi/180) * math.Tan(s.Declination)
	s.Sunset = math.Acos(min(max(x, -1), 1))
	return s
}

// Radiation gives the day's extraterrestrial radiation Ra, MJ m⁻² d⁻¹ (eq. 21).
func Radiation(latitude float64, yearDay int) float64 {
	s := SunOn(latitude, yearDay)
	phi := latitude * math.Pi / 180
	return 24 * 60 / math.Pi * solarConstant * s.Distance *
		(s.Sunset*math.Sin(phi)*math.Sin(s.Declination) +
			math.Cos(phi)*math.Cos(s.Declination)*math.Sin(s.Sunset))
}

// Daylight gives the hours of daylight N (eq. 34).
func Daylight(latitude float64, yearDay int) float64 {
	return 24 / math.Pi * SunOn(latitude, yearDay).Sunset
}

// latentHeat turns MJ m⁻² d⁻¹ into mm of water a day (eq. 20: 1/λ at 20 °C).
const latentHeat = 0.408

// Hargreaves gives reference evapotranspiration ET0 in mm a day from the day's
// least and most temperature in °C and Ra in MJ m⁻² d⁻¹ (eq. 52).
func Hargreaves(least, most, ra float64) float64 {
	mean, span := (least+most)/2, max(most-least, 0)
	return max(0.0023*(mean+17.8)*math.Sqrt(span)*latentHeat*ra, 0)
}
