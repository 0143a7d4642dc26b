package entry

// About names what a question, or an answer, is about.
type About string

// The questions of the contract.
const (
	AskNext    About = "next"
	AskReady   About = "ready"
	AskPaddock About = "paddock"
	AskRate    About = "rate"
	AskRound   About = "round"
	AskPlan    About = "plan"
	AskDue     About = "due"
	AskHistory About = "history"
	AskSummary About = "summary"
	AskHelp    About = "help"
)

// Abouts lists every question.
func Abouts() []About {
	return []About{AskNext, AskReady, AskPaddock, AskRate, AskRound, AskPlan, AskDue,
		AskHistory, AskSummary, AskHelp}
}

// Question is something asked of the bot; nothing is logged by it.
type Question struct {
	About   About    `json:"about"`
	Paddock string   `json:"paddock,omitempty"`
	Mob     string   `json:"mob,omitempty"`
	Days    float64  `json:"days,omitempty"`    // a what-if round length, a plan's or history's length
	Ha      float64  `json:"ha,omitempty"`      // a what-if area a day, hectares
	Shut    []string `json:"shut,omitempty"`    // what if these paddocks were shut
	Without bool     `json:"without,omitempty"` // "and without it?": the last what-if taken back
	Why     bool     `json:"why,omitempty"`     // explain the figures
	Picture bool     `json:"picture,omitempty"` // asked for as a picture
	File    bool     `json:"file,omitempty"`    // asked for as a file (export, calendar)
}

// Option is one way to understand a message that was unclear.
type Option struct {
	Label    string    `json:"label"`
	Entries  []Entry   `json:"entries,omitempty"`
	Question *Question `json:"question,omitempty"`
}

// Ask is the bot's question back to the sender, before anything is logged.
type Ask struct {
	Reason  string   `json:"reason"`            // one sentence to the sender
	Paddock string   `json:"paddock,omitempty"` // the one that the message named, where it did
	Options []Option `json:"options"`
}

// Reading is all that one message says. Exactly one of Entries, Question, Ask
// and Ignored is set.
type Reading struct {
	Text     string
	Entries  []Entry
	Also     *Question // a question that stands behind entries
	Question *Question
	Ask      *Ask
	Ignored  bool
	// Understood names what spelling was forgiven or what was taken from the
	// talk before ("read 'tellers' as tillers"), for the reply to repeat.
	Understood []string
}
