package reply

// Command is a slash command with what it does, in plain words.
type Command struct{ Name, Does string }

// askable are the commands for everybody.
var askable = []Command{
	{"next", "which paddock is next, and why"},
	{"ready", "which paddocks are ready"},
	{"plan", "the order for the coming days"},
	{"round", "how long a round, how many hectares a day"},
	{"rate", "how fast leaves are coming"},
	{"due", "what needs counting"},
	{"paddock", "how one paddock stands: /paddock 12"},
	{"history", "what was logged of late"},
	{"summary", "the morning summary, now"},
	{"undo", "take back the last thing you logged"},
	{"help", "what you can write"},
}

// Commands gives the slash commands by who is shown them: "groups", "private",
// and "admins", the administrators of groups.
func Commands() map[string][]Command {
	managers := append([]Command{{"setup", "set the farm up: name and zone"}}, askable...)
	return map[string][]Command{"groups": askable, "private": askable, "admins": managers}
}
