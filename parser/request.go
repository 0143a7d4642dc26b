package parser

// A question may come as a request: "could you send us the summary", "I'd like
// to see the plan", "give me the story on 12".

// request tells whether a sentence asks to be given something, and where the
// thing asked for begins.
//
//	request = ( "can" | "could" ) who verb | verb ( "me" | "us" ) | [ "i" ] ( "need" | "want" ) "the" thing
//	        | ( "i" "would" "like" | "let" "me" ) [ "to" ] verb | "any" "chance" "of" | verb ( "the" | "my" ) thing
func (r *reader) request(from, to int) (body int, ok bool) {
	i := from
	for r.tok(i).tag == courtesy || r.oneOf(i, "bot", "leafround", ",") {
		i++
	}
	start := i
	j := i + 1
	switch {
	case r.oneOf(i, "can", "could", "may", "might", "would", "will") && askers[r.tok(j).text]:
		i = r.over(j+1, "please", "just", "quickly", "maybe", "possibly", "kindly", "pls")
		if !fetchVerbs[r.tok(i).text] {
			return from, false
		}
		i++
	case r.oneOf(i, "id", "wed") && r.oneOf(j, "like", "love", "want", "need", "rather"):
		i = j + 1
	case r.oneOf(i, "i", "we", "id", "wed", "could", "would") && r.oneOf(j, "would", "do") && r.oneOf(j+1, "like", "love", "want"):
		i = j + 2
	case r.oneOf(i, "i", "we") && r.oneOf(j, "need", "want") && r.oneOf(j+1, "to") && r.oneOf(j+2, "know", "see", "check", "have"):
		i = j + 2
	case r.oneOf(i, "mind") && r.oneOf(j, "telling", "showing", "giving", "sending"), r.oneOf(i, "would") && r.oneOf(j, "you") && r.oneOf(j+1, "mind") && r.oneOf(j+2, "telling", "showing", "giving", "sending"):
		for !r.oneOf(i, "telling", "showing", "giving", "sending") {
			i++
		}
		i++
	case r.oneOf(i, "lay", "map", "set", "plan") && r.oneOf(j, "out") && r.oneOf(j+1, "the", "my", "our") && r.oneOf(j+2, "next", "coming", "plan", "order", "round", "rotation"):
		return j + 1, true // "lay out the next week for me"
	case r.oneOf(i, "let") && r.oneOf(j, "me", "us"):
		i = j + 1
	case r.oneOf(i, "lets", "lemme") && fetchVerbs[r.tok(j).text]:
		i = j
	case r.oneOf(i, "any") && r.oneOf(j, "chance"):
		i = j + 1
	case fetchVerbs[r.tok(i).text] && r.oneOf(j, "me", "us", "up") || r.oneOf(i, "gimme", "gis", "giz"):
		i = j
		return r.thing(r.over(i, "me", "us", "up", "please", "pls"), start, to)
	case r.oneOf(i, "list", "show", "print", "pull", "need", "want", "after", "send", "post", "run"), r.oneOf(i, "i", "im", "we", "just") && r.oneOf(j, "need", "want", "after"):
		if r.oneOf(i, "i", "im", "we", "just") {
			i++
		}
		i++
		if k := r.over(i, "up", "the", "my", "our", "todays", "what", "whats", "everything", "all"); k > i && (r.requestNoun(k, to) || r.oneOf(k-1, "what", "whats", "everything", "all") && r.oneOf(start, "list", "show")) {
			return i, true
		}
		return from, false
	default:
		return from, false
	}
	i = r.over(i, "to", "of", "i", "we", "you", "can", "could")
	if fetchVerbs[r.tok(i).text] {
		i++
	}
	return r.thing(r.over(i, "me", "us", "up", "please", "pls", "a", "look", "at"), start, to)
}

// thing tells whether what stands at i can be asked for: something that the bot
// gives, or a question in other words.
func (r *reader) thing(i, start, to int) (int, bool) {
	k := r.over(i, "the", "a", "an", "my", "our", "todays", "this", "that", "about", "just")
	if t := r.tok(k); t.tag == whWord || t.tag == nextWord || r.oneOf(k, "everything", "all", "about", "if") || t.tag == lastWord && r.hasTag(k, to, dayUnit) || r.requestNoun(k, to) {
		return i, true
	}
	if k > i && r.oneOf(k-1, "about") && r.padAhead(k) {
		return i, true // "tell me about 12"
	}
	return start, false
}

// requestNoun tells whether something that the bot gives is named shortly behind
// a token.
func (r *reader) requestNoun(i, to int) bool {
	for k := i; k < min(i+5, to); k++ {
		if requestNouns[r.tok(k).text] {
			return true
		}
	}
	return false
}

var (
	fetchVerbs   = wordSet(`have get see show send give tell pull list run share post flick grab shoot bring let print read fire pass do know check`)
	requestNouns = wordSet(`summary report plan order history log ready round rotation rate pace next calendar export map chart graph picture csv spreadsheet
	commands help menu lowdown rundown story overview entries wedge readings list`)
	// dialect gives the plain word for one of a country's own.
	dialect = map[string]string{"hoos": "hows", "hoo": "how", "whit": "what", "whits": "whats", "whaur": "where", "whaurs": "wheres"}
)

// salute steps over a greeting that opens a sentence: "morning,", "now then,".
func (r *reader) salute(i, to int) int {
	k := i
	for k < to && (r.tok(k).tag == courtesy || r.tok(k).tag == daytimeWord || r.oneOf(k, "good", "now", "then", "all", "team", "folks", "lads", "guys", "bot")) {
		k++
	}
	if k > i && r.oneOf(k, ",", "-", "!") {
		return k + 1
	}
	return i
}

// wantTail gives the token where a question ends and what somebody wants with it
// begins: ", need to know before I set the fences", ", I'd like the milkers in
// there".
func (r *reader) wantTail(from, to int) int {
	for k := from + 2; k < to-2; k++ {
		if !r.oneOf(k, ",", "-", ";") {
			continue
		}
		i := r.over(k+1, "as", "cos", "because", "just", "really", "sorry", "only")
		switch {
		case r.oneOf(i, "need", "want", "wanting", "trying", "hoping", "gotta", "keen"):
		case r.oneOf(i, "i", "id", "im", "ive", "we", "wed", "were", "weve") && r.oneOf(r.over(i+1, "would", "really", "just", "do", "am", "are", "have", "got"), "need", "want", "like", "love", "gotta", "trying", "hoping", "keen", "to"):
		default:
			continue
		}
		for n := i; n < to; n++ {
			if t := r.tok(n); t.shape == number || t.tag == whWord && !r.oneOf(n, "when", "where") || t.text == "?" || t.tag == nextWord {
				return to
			}
			if p, ok := r.longest(n); ok && p.known {
				return to
			}
		}
		return k
	}
	return to
}

// reasonFrom gives the token where a question ends and its reason or a courtesy
// begins: "as I leave before it comes", "if you don't mind".
func (r *reader) reasonFrom(from, to int) int {
	for k := from + 2; k < to; k++ {
		switch {
		case r.oneOf(k, "as", "cos", "coz", "because", "cause", "since", "before") && r.oneOf(k+1, "i", "im", "we", "were", "ive", "the", "my") && r.oneOf(k+1, "i", "im", "we", "ive"),
			r.oneOf(k, "so") && r.oneOf(k+1, "i", "we") && r.oneOf(k+2, "can", "know", "could"),
			r.oneOf(k, "if", "when") && r.oneOf(k+1, "you", "u", "ya", "ye", "youve", "youre", "its", "thats", "possible") && !r.hasTag(from, k, whWord),
			r.tok(k).text == "," && r.idleTail(k, to) && !r.hasTag(k, to, nextWord):
			return k
		}
	}
	return to
}
