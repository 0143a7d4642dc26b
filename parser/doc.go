// Package parser reads paddock texts: what somebody types with cold hands
// becomes entries for the log, a question to the bot, or a question back.
//
//	parser.Read("p12 2 2.5 2", parser.Context{Now: now, Book: book})
//	// one entry.Count of three tillers in paddock 12, today
//
// It is pure: the clock, the zone and the farm's register arrive in a
// [Context]. It never guesses a digit, never logs what was only planned, asked,
// denied, wished or heard of, and never fails: what is unclear becomes an
// [entry.Ask] with the ways in which it could be meant.
//
// A text is cleaned (clean.go), cut into tokens (scan.go) and read by a
// grammar. Each function that reads a rule has the rule over it; the rules from
// the top:
//
//	message   = command | alarm | setup | mending | again | { sentence }
//	sentence  = { clause [ separator ] } [ question ]
//	clause    = { idiom | limit | when | amount | paddocks | tally | herd | word }
//	paddocks  = place { ( "," | "and" | "&" | "+" | "/" ) place } | whole "-" whole
//	place     = [ "p" | "pdk" | "paddock" | "field" | "pasture" | "#" ] name | name "paddock"
//	count     = place [ ":" | "," | "-" | "=" ] [ intro ] scores [ tail ]
//	scores    = item { [ "," | ";" | "and" | "/" ] item }
//	item      = tiller [ "x" whole ] | aside
//	tiller    = value [ "+" value [ "+" value ] ] [ "+" ]
//	value     = whole [ fraction ] | fraction | decimal | number-words
//	when      = [ "on" | "since" ] day [ hour ] | hour
//	limit     = ( "until" | "again" "from" | "from" ) day | [ "for" ] whole ( "days" | "weeks" )
//	amount    = residual | rain | temperature | share | number strange-unit
//	herd      = [ whole ] mob | whole "head"
//
// Clauses are then merged into statements (merge.go: "12 grazed yesterday, 13
// today"), and each statement is given its meaning (meaning.go), unless a word
// in it says that it did not happen (guarded.go).
//
// Where to look:
//
//   - the message: parser.go, zone.go, message.go, joined.go, clause.go, acts.go, opening.go, merge.go, inherit.go, heading.go, column.go, tidy.go; what words do to a clause: lexicon.go, idiom.go, looseword.go, idioms.go, shorthand.go, spell.go, common.go
//   - what a statement means: meaning.go, reading.go, guarded.go, takenback.go, stilltocome.go, finebeside.go, noverb.go, doubtful.go, denied.go, nobody.go; in plain words: print.go, printyear.go, say.go
//   - paddocks and herds: book.go, pads.go, notapad.go, padlist.go, pairs.go, walk.go, shortname.go, position.go, wild.go, unregistered.go, roles.go, herd.go
//   - counts: number.go, numberword.go, progress.go, countsthing.go, scores.go, scored.go, multiples.go, tally.go, tallytail.go, counted.go, countbeside.go, countlost.go, yellowing.go, aside.go, setaside.go, tillerparts.go, introduced.go, gist.go, vaguely.go, repeat.go, eachof.go, openslist.go, firmcount.go
//   - days and hours: when.go, date.go, limit.go, freefrom.go, daytold.go, notdays.go, hour.go, ahead.go, presenttense.go
//   - grazings: graze.go, amount.go, oddpad.go, eaten.go, exception.go, exceptpads.go, given.go, wherethey.go, kept.go, leftbehind.go, uneaten.go, share.go; holds and cuts: hold.go, lifted.go, spread.go, mowing.go, bales.go, canopytold.go, otherjob.go
//   - weather: weather.go, temperature.go, series.go, raindays.go, leastmost.go; alarms and notes: alarm.go, alarmdown.go, alarmsplit.go, illtold.go, illsigns.go, splash.go, trouble.go
//   - questions: question.go, questionrules.go, behind.go, request.go, command.go; setting up: setup*.go
//   - mends: mending.go, mendtail.go, correction.go, undo.go, undotalk.go, again.go, mendasked.go; asks and their answers: offer.go, choose.go
//   - talk beside a report: talk.go, booked.go, stray.go, plea.go, promise.go, unsent.go, notreached.go, byway.go, agreed.go, asidetold.go, standstill.go, people.go, besidetalk.go, bracket.go; a report beside talk: firstreport.go, passedover.go
package parser
