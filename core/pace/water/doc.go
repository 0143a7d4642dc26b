// Package water reckons how thirsty grass is: reference evapotranspiration
// after Hargreaves and a one-bucket balance of the soil's water, both after
// FAO Irrigation and Drainage Paper 56 (Allen, Pereira, Raes & Smith 1998),
// whose equation numbers stand beside each function. It never knows a farm or
// a date: a day is its number in the year, a place its latitude.
//
//	ra := water.Radiation(-20, 246)          // 32.2 MJ m⁻² d⁻¹ (example 8)
//	et := water.Hargreaves(14.8, 26.6, ra2)  // 5.0 mm a day (example 20)
//	b := water.Bucket{TAW: 85, P: 0.6}
//	b.Day(rain, et)
//	b.Stress()                               // Ks, 0 to 1
package water
