// Package round reckons the rotation: how long a round the grass needs and how
// long the one being run is, which paddocks are ready and in what order of
// merit, what needs counting, the order for the coming days that gives up the
// least growth, and the advice that follows.
//
// It never logs anything, reads no clock and words nothing: its answers are
// values with every figure and the reason behind it. And it never sends a mob
// into a paddock that is held: a held paddock is left out of every ranking and
// enters a plan on the first day it may be grazed, not before.
//
// The planner works on a value of its own, [Problem], so that it can be tried
// alone:
//
//	plan := round.Solve(round.Problem{Today: day, Fields: fields, Mobs: mobs})
//	fmt.Println(plan.Lost, plan.Bound) // share of growth given up; the least any order can reach
//
// Its currency is the share of growth given up, weighted by area: each strip
// of a paddock is charged for the stage at which it is grazed, and the mean is
// taken over the uncertainty of that stage. The way from a problem to a plan:
// [Solve] prices each paddock on each day (price.go), parts the farm into
// groups that share no paddock (group.go), proves a lower bound by the dual of
// a transport problem (transport.go, bound.go), and finds the order exactly
// for a few paddocks (exact.go), else by a start from the transport problem
// and local search (search.go).
package round
