package practice

// Try is a thing to try: a text to send and what it is for.
type Try struct {
	Text string
	For  string
}

// Tries gives things to try on a farm with numbered paddocks.
func Tries() []Try {
	return []Try{
		{"p12 2 2.5 2 3 2.5 2", "Count leaves: a paddock and one score for each tiller"},
		{"what's next?", "Ask which paddock to graze next"},
		{"cows out of 12 into 14 this morning", "Log a move"},
		{"p12 was 2.5 2.5 3 2 2 3", "Put right what you just sent"},
		{"undo", "Take back your latest entry"},
		{"how is 7?", "Ask how one paddock stands"},
		{"how long is the round?", "Compare the round the grass needs with the one being run"},
		{"plan 7 days", "Ask for the order of the coming days"},
		{"p9 shut for silage", "Take a paddock out of the round"},
		{"16 mm overnight", "Log the rain"},
		{"what needs counting?", "Find out where to walk"},
		{"summary", "Read the morning's summary now"},
		{"help", "See all that it understands"},
	}
}
