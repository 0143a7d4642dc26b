// Package pace estimates how fast leaves come: each paddock's leaf stage now,
// the pace to come, and the date of any stage, each with an interval that means
// what it says (eight truths out of ten lie within an 80 % interval). It never
// reads a clock, never forgets a count, and never decides what to graze: that
// is package round.
//
// A [Keeper] takes what the log says happened ([Event]: a grazing, a count, a
// day's weather), on any day and in any order; [Keeper.On] gives the [Estimate]
// of a day.
//
//	k := pace.New(pace.Site{Lat: -37.8, Placed: true, South: true})
//	k.Paddock("12", leaf.Of(entry.Ryegrass))
//	k.Add(pace.Event{ID: 1, Day: grazed, Paddock: "12", Do: &pace.Restart{Share: 1}})
//	k.Add(pace.Event{ID: 2, Day: today, Paddock: "12", Do: &pace.Seen{Mean: 2.25, N: 8, SE: 0.16, SD: 0.45}})
//	f, ok := k.On(today).Reach("12", 2.5) // the day of 2.5 leaves, and its 80 % interval
//
// # The model
//
// Everything here is ours unless a source is named. Leaves a day in paddock p
// on day t are
//
//	exp( season(t) + grass(p) + level + drift + weather + a·cos(t) + b·sin(t) + β·warmth(t) + γ·dryness(t) + own(p) )
//
// season is the rule of thumb for the latitude; level is this farm's steady
// difference from it, a and b what its year does differently, drift and weather
// two wandering terms (weeks, days), own the paddock's difference. A Kalman
// filter (Kalman 1960, J. Basic Eng. 82:35) carries them all, with the log of
// each paddock's leaf stage, day by day (state, grow). It runs in three tempers
// at once, from calm to wild, which weigh by how well they foresee the counts
// (mind). A count is one look at one leaf stage; its likelihood (sight)
// saturates at the leaves that stay alive, so that a full tiller is a floor, and
// has a part for counts that cannot fit: such a count is kept and flagged, moves
// no pace, and cuts its paddock's stage loose until the next count.
//
// The day of a stage is a stopping time: leaf stage only rises, so the chance
// that it comes after day d is the chance that the stage on d is still below.
//
// States are kept (check) as they were on each of the last ten days and ever
// more rarely before: a new count of today re-runs nothing, a late one little.
package pace
