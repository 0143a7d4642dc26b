package practice

// Try is a thing to try: a text to send and what it is for.
type Try struct {
	Text string
	For  string
}

// Tries gives things to try on a farm with numbered paddocks.
func Tries() []Try {
	return []Try{
		{"p11 2 2.5 2 3 2.5 2", "Count leaves: a paddock, and a score for each tiller"},
		{"I meant p10", "Put right what you just sent"},
		{"undo", "Take back your latest entry"},
		{"2.5 2 3 2.5", "Forget the paddock, and be asked"},
		{"what's next?", "Which paddock to graze next, and why"},
		{"milkers into 10 this morning", "Log a move"},
		{"how is 7?", "How one paddock stands"},
		{"why 7?", "What the figures rest on"},
		{"how fast are leaves coming?", "The pace of leaves"},
		{"how long is the round?", "The round that the grass needs, and the one being run"},
		{"plan 7 days", "The order of the coming days"},
		{"picture", "See every paddock at a glance"},
		{"9 shut for silage", "Take a paddock out of the round"},
		{"16 mm rain", "Log the weather"},
		{"what needs counting?", "Where to walk"},
		{"summary", "The morning's summary, now"},
		{"help", "All that it understands"},
	}
}
