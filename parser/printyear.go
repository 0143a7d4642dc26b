package parser

import (
	"fmt"
	"strings"

	"leafround/core/entry"
)

// printYear prints the settings that carry a farm through a year.
func printYear(s entry.Setup) string {
	switch s.What {
	case entry.SetRename:
		return "rename " + printWhom(s) + " to " + s.To
	case entry.SetRetire:
		return "retire " + padName(s.Paddock)
	case entry.SetSplit:
		return "split " + padName(s.Paddock) + " into " + printParts(s.Paddocks)
	case entry.SetMerge:
		return "merge " + printPads(s.Names) + " into " + s.To
	case entry.SetMerged:
		return "merge " + strings.Join(s.Names, " and ") + " into " + s.To
	case entry.SetOnly:
		return s.Mob + " only on " + printPads(s.Names)
	case entry.SetBar:
		return "bar " + s.Mob + " from " + printPads(s.Names)
	case entry.SetDaily:
		return fmt.Sprintf("%s %s ha a day", s.Mob, figure(float64(s.Ha)))
	case entry.SetAway:
		return s.Mob + " away"
	case entry.SetBack:
		return s.Mob + " back home"
	case entry.SetPin:
		return strings.TrimSpace("pin " + padName(s.Paddock) + " on " + s.Date.String() + " " + s.Mob)
	}
	return printManner(s)
}

// printManner prints how the bot behaves and reckons.
func printManner(s entry.Setup) string {
	onOff := map[bool]string{true: "on", false: "off"}
	switch s.What {
	case entry.SetManager:
		return s.Name + map[bool]string{true: " is no longer", false: " is"}[s.Off] + " a manager"
	case entry.SetQuiet:
		return "quiet " + onOff[s.Yes]
	case entry.SetTopic:
		return "summary here"
	case entry.SetUnits:
		return "use " + s.Unit
	case entry.SetBackFence:
		return "back fence " + onOff[s.Yes] + " for " + s.Mob
	case entry.SetRemnant:
		if s.Rule == entry.RemnantHalf {
			return "remnant half"
		}
		return "remnant by size"
	case entry.SetHoldDays:
		return fmt.Sprintf("%s hold %d days", s.Reason, s.Days)
	case entry.SetUnpin:
		if s.Paddock == "" {
			return "unpin " + s.Mob
		}
		return "unpin " + strings.TrimSpace(s.Mob+" in "+padName(s.Paddock))
	}
	return ""
}

// printWhom prints what gets another name.
func printWhom(s entry.Setup) string {
	switch {
	case s.Paddock != "":
		return padName(s.Paddock)
	case s.Mob != "":
		return "mob " + s.Mob
	}
	return "farm"
}

func printPads(names []string) string {
	list := make([]string, len(names))
	for i, n := range names {
		list[i] = padName(n)
	}
	return strings.Join(list, ", ")
}

// printParts prints the parts of a split, with their areas where told.
func printParts(plots []entry.Plot) string {
	list := make([]string, len(plots))
	for i, p := range plots {
		list[i] = p.Name
		if p.Area > 0 {
			list[i] += " " + figure(float64(p.Area)) + " ha"
		}
	}
	return strings.Join(list, " and ")
}
