// Package sched runs what is due once a farm and local day: the summary. It
// reckons the moment in the farm's zone, runs it once however often the
// program is started, and skips it, with a word, when it is hours late.
//
//	s := sched.Sched{Store: store, Now: clock.Now}
//	err := s.Run(ctx)                  // until the context ends
//	next, ok, err := s.Next(ctx, now)  // or step by step, on a clock of one's own
//	err = s.Tick(ctx, next)
//
// It does not know what a summary says.
package sched
