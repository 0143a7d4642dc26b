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
// # The plan
//
// Its currency is the share of growth given up, weighted by area: each strip
// of a paddock is charged for the stage at which it is grazed, and the mean is
// taken over the uncertainty of that stage. When it looks for an order it minds
// one thing more, what grazing regrowth just begun does to a plant (harm); the
// growth given up and its bound, which a plan states, are without that. The way
// from a problem to a plan: [Solve] prices each paddock on each day (price.go),
// parts the farm into groups that share no paddock (group.go), finds the order
// exactly for a few paddocks (exact.go, exactherds.go), else by a start from a
// transport problem and local search (transport.go, search.go, moves.go), and
// proves a lower bound by Lagrangian duality (bound.go). An order here is one in
// which no mob stands idle beside a paddock that it may graze.
//
// How good it is, on invented farms (go test ./core/round -long): equal to the
// best of all orders for up to 12 paddocks of one mob, and mostly for up to 14
// of several. On 200 farms of 60 paddocks and one to three mobs the gap between
// the order and the bound is 0.4 % of growth in the median and 2.2 % at worst,
// in 10 ms of processor time, 50 at worst; a day's change takes 4 ms, 10 at
// worst. The bound is within 0.1 % for one mob; where it is loose, it is for
// several mobs that may not graze everywhere: it cannot tell which of them runs
// out of paddocks first. testdata/published/rotation-milp.txt sets the planner
// beside a general solver.
//
// # The speed
//
// [LengthOf] tells the round that the grass needs by the field guide's
// arithmetic; [BestLength] how fast to go now, so that the least is given up
// over the months to come (pick.go). With both, a simulated year gives up half
// of what the highest stage first does (testdata/year-south.txt and
// year-north.txt); most of that comes from the speed.
package round
