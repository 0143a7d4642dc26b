// Package entry holds what the log of a farm is made of: a closed set of entry
// kinds, the questions that people ask, dates and quantities with their units.
// It is the leaf of the program that every other package may import; it
// imports nothing of ours, reads no clock and does no I/O.
//
// One message yields one [Reading]: entries to log, a question, a question
// back ([Ask]), or nothing, when the talk was not for the bot. For instance
// "p12 2 2.5 2" reads as
//
//	Reading{Entries: []Entry{Count{Paddock: "12", Date: today, Said: three tillers}}}
//
// An entry that the log has kept is a [Logged].
package entry
