// Package leaf turns tillers into a leaf stage: what a grass carries (its live
// leaves and its window), the mean of a sample with its interval, what a stage
// says about grazing, and what growth an early or late grazing gives up. It
// never looks at a date, a paddock's past or a neighbour: that is package pace.
//
//	h := leaf.Of(entry.Ryegrass)
//	s := leaf.Measure(count, leaf.Usual)      // 2.25, from 1.9 to 2.6
//	leaf.Advise(h, entry.LeafStage(s.Mean), false) // "ready": the window is 2 to 3
package leaf
