// Package invented makes up a farm and a season of texts from its team, for the
// demo: Totara Bend, thirty paddocks, Ana who manages it, Wiremu and Jo. It
// knows nothing of the bot; what it gives is what people would have typed.
//
//	for _, m := range invented.Season(now) { say(m.Who, m.At, m.Text) }
//
// The growth of its grass is made up (ours, for the demo only): no figure of
// it is evidence of anything.
package invented
