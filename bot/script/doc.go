// Package script reads and prints conversation scripts: plain text in which
// people and the bot speak in turn. It plays nothing itself.
//
//	2026-11-25 17:40 Jo [group 2]: p12 2 2.5 2
//	bot: 12 stands at 2.2 leaves ...
//	2026-11-26 06:15 bot* Good morning ...
//
// A message is a moment, a name, marks in brackets and a text; lines indented
// by two spaces continue it. The bot's lines are dropped on reading, and
// printed anew: a script that prints itself is one that still holds.
package script
