package reply

import (
	"fmt"
	"html"
	"time"

	"leafround/core/answer"
	"leafround/core/entry"
)

// The sentences of this file answer no entry and no question: they are what
// the bot says around them. Sentences that are put into an answer are plain
// text; those that are put behind one are escaped here.

// Welcome greets a group that the bot was added to.
func Welcome() string {
	return "Hello. I keep this farm's leaf counts and stock moves, and say which paddock is next. Three messages get you going:\n" +
		"set up Totara Bend, Pacific/Auckland\n" +
		"paddocks (and below it, one a line: name and hectares, such as 7 2.9)\n" +
		"mob milkers 320\n" +
		"Use your farm's name and zone. Then just write what you count: p7 2 2.5 2."
}

// NoFarm is said where somebody speaks to the bot before a farm is set up.
func NoFarm() string {
	return "No farm is set up here yet. Write its name and zone first: set up Totara Bend, Pacific/Auckland"
}

// Unknown is said in private to somebody who is on no farm.
func Unknown() string {
	return "I don't know you from any farm yet. Write something in your farm's group first, or set one up here: set up Totara Bend, Pacific/Auckland"
}

// Reading is said before a long file is taken in.
func Reading(name string, bytes int) string {
	return html.EscapeString(fmt.Sprintf("Reading %s (%s kB), a moment.", name, whole(float64(bytes)/1000)))
}

// GivenUp is said where a message could not be handled, through our own fault.
func GivenUp() string {
	return "Something went wrong on my side: this message is kept, but nothing was logged from it. Please send it again in other words, and tell whoever runs me."
}

// StandIn says which paddock a location lies in.
func StandIn(paddock string) string {
	return "You stand in " + pdk(paddock) + ": scores without a name are for it, for the next hour."
}

// EditedLate says that a message was changed after somebody went by it.
func EditedLate(who, paddock string, at time.Time) string {
	return html.EscapeString(fmt.Sprintf("This was changed after %s had logged something for %s (%s): tell %s.",
		who, pdk(paddock), at.Format("Mon 2 Jan 15:04"), who))
}

// AreaDiffers names an area that a boundary contradicts, hectares.
func AreaDiffers(paddock string, typed, measured entry.Hectares, v Voice) string {
	return html.EscapeString(fmt.Sprintf("%s: you typed %s, its boundary measures %s. I keep what you typed.",
		upper(pdk(paddock)), v.area(typed), v.area(measured)))
}

// WeatherTaken says what a table of daily weather held, and names the lines
// that could not be taken.
func WeatherTaken(days int, from, to entry.Date, bad []string) string {
	text := fmt.Sprintf("Weather taken: %s, from %s to %s.", counted(days, "day"), dated(from), dated(to))
	const most = 10
	for i, b := range bad {
		if i == most {
			return text + fmt.Sprintf("\nand %d more lines left out.", len(bad)-most)
		}
		text += "\nLeft out " + b
	}
	return text
}

// LogFile goes with the log as a file.
func LogFile(entries int) string {
	if entries == 1 {
		return "The log, 1 entry, oldest first."
	}
	return fmt.Sprintf("The log, %s entries, oldest first.", whole(entries))
}

// PlanFile goes with the plan as a calendar.
func PlanFile(steps int) string {
	if steps == 0 {
		return "The plan has no steps yet: I need paddocks with areas, and mobs."
	}
	return fmt.Sprintf("The plan as a calendar, %s. It is advice: check each paddock by eye before you move.", counted(steps, "step"))
}

// Stay words one step of a plan for a calendar.
func Stay(s answer.Step) (what, note string) {
	return upper(mobWord(s.Mob)) + " in " + pdk(s.Paddock), leaves(s.Stage) + " when reached; an estimate, check by eye"
}

func dated(d entry.Date) string { return d.Time().Format("2 Jan 2006") }

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return whole(n) + " " + what + "s"
}
