// Package farm folds the log of a farm into what stands now: paddocks, mobs,
// holds, grazings, counts, weather and settings, one of them a file.
//
// It never reads a clock, never forgets an entry and never guesses what nobody
// said: where something follows from an entry without having been said (a mob
// that goes into one paddock has left the other), it leaves a [Remark] for the
// reply to repeat.
//
//	f := farm.Fold(log)
//	p := f.Find("river1")
//	p.Regrowth.Since // the day the last stock left
//
// A farm is kept between messages: [Farm.Apply] takes one entry more, in a
// few microseconds, and takes one out again when it was withdrawn or mended.
// However entries arrive (late, withdrawn, told twice), the farm is the one
// that [Fold] makes of the whole log.
//
// It is not for several goroutines at once, and neither are its estimates.
//
// Two orders are at work. The register (names, areas, mobs, settings) follows
// the order of sending, and every entry is understood by the register of its
// moment: "12" is the paddock that was called 12 then. What happened to one
// paddock follows the order of its days, and within a day that of sending. An
// entry that mends another keeps the other's place by keeping its SentAt.
package farm
