// Package weather reads a table of daily weather: CSV with the header
// date,tmin,tmax,rain, one day a line. It does no I/O: it takes text and gives
// entries, and beside them every line that it could not take, with its number
// and what is wrong. No line is half-read, and a bad line never hides a good one.
//
//	got := weather.Read("date,tmin,tmax,rain\n2026-11-24,8.5,19,0\n2026-11-25,9,x,2\n")
//	got.Entries // a temperature and rain on the 24th
//	got.Bad     // line 3: tmax "x" is not a number
package weather
