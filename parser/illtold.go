package parser

// signsTold tells whether a sign of illness is told of an animal:
//
//	told = animal { word } sign | sign { word } animal
//	animal = "cow" | mob | ( number | "one" | "couple" ) [ "of" "them" ]
//
// What is denied, asked for, bought against it, or over is no sign.
func (r *reader) signsTold(from, to int) bool { return r.signs(from, to, false) }

// signs is signsTold, of what is over as well where past.
func (r *reader) signs(from, to int, past bool) bool {
	for i := from; i < to; {
		end := r.sentenceEnd(i, to)
		if r.signIn(from, i, end, past) {
			return true
		}
		i = end + 1
	}
	return false
}

// signIn looks for a sign in one sentence of a message.
func (r *reader) signIn(first, from, to int, past bool) bool {
	asked, over := past, false
	isOver := func() bool { // looked for once
		if !asked {
			asked, over = true, r.isOver(from, to)
		}
		return over
	}
	for i := from; i < to; i++ {
		t := r.tok(i)
		if t.shape != word && t.shape != number {
			continue
		}
		if bodyParts[t.text] && t.shape == word && !r.oneOf(i-1, "own") && !r.oneOf(i+1, "ring", "rings", "rope", "tag", "band", "collar") && r.oneBeast(from, i) && !r.noSign(from, i, i+1) && !isOver() {
			return true // "cow cut her leg on the wire"
		}
		list := signsOf[t.text]
		for n := range list {
			k, ok := r.signAt(&list[n], i, to)
			if ok && !r.noSign(from, i, k) && !isOver() && r.ailing(list[n].need, first, from, i, k, to) {
				return true
			}
		}
	}
	return !past && (r.lostStock(from, to) || r.vetCalled(from, to))
}

// ailing tells whether an animal stands as near to a sign as the sign needs.
func (r *reader) ailing(need signNeed, first, from, i, k, to int) bool {
	if r.illBefore(from, i) || need != needOne && r.beast(k) {
		return need != needOne || r.oneBeast(from, i) && !aimedAt[r.tok(k).text]
	}
	if need != needNear {
		return false
	}
	for n := i - 1; n >= max(from, i-12); n-- {
		if r.noBeast(n) && i-n < 4 {
			return false // "the fence fell over and heifers are in 9"
		}
		if r.noBeast(n) {
			break
		}
		if r.beast(n) {
			return true
		}
	}
	for n := k; n < min(to, k+7) && !r.noBeast(n); n++ {
		if r.beast(n) || r.tok(n).shape == number && r.tok(n).value >= 100 && r.tok(n).value < 2000 && r.oneOf(n-1, "on", "of", "with", "tag", "number") && r.tok(n+1).text != "-" {
			return true
		}
	}
	if from == first || i > from+6 {
		return false
	}
	for n := from; n < to; n++ {
		if r.noBeast(n) {
			return false // "heifers into 5. I was coughing all day"
		}
	}
	_, stock := r.has(max(first, from-longestTalk), from, stockOnly)
	return stock // "heifer in 9. frothing at the mouth"
}

// illBefore tells whether an animal, or a number that can be no other thing's,
// stands right before a token: "two of them are", "212 is", "cow in 6 is".
func (r *reader) illBefore(from, i int) bool {
	for n := i - 1; n >= max(from, i-8); n-- {
		t := r.tok(n)
		switch {
		case r.beast(n):
			return true
		case t.shape == word && (linkWords[t.text] || t.tag == inWord || t.tag == atWord):
			continue
		case t.text == ",":
			continue
		case r.placeEnds(from, n):
			continue
		case r.several(n):
			return r.tok(n-1).tag != inWord && r.tok(n-1).tag != padMark && (n == from || r.tok(n-1).shape != number)
		default:
			return false
		}
	}
	return false
}

// placeEnds tells whether a token is the name of a paddock behind "in".
func (r *reader) placeEnds(from, n int) bool {
	for b := n - 1; b >= max(from, n-3); b-- {
		if t := r.tok(b); t.tag == inWord || t.tag == atWord || t.tag == onWord {
			p, ok := r.onePad(b+1, true)
			return ok && p.known && p.next == n+1
		}
	}
	return false
}

// several tells whether a token counts animals, or is an ear tag.
func (r *reader) several(i int) bool {
	t := r.tok(i)
	return t.shape == number && !t.decimal && (t.value > 0 && t.value < 20 || t.value >= 100 || r.oneOf(i-1, "number", "tag", "no")) || t.tag == numberWord && t.sense > 0 || r.oneOf(i, "one", "couple", "few", "another")
}

// oneBeast tells whether the animal told of right before a token is one alone.
func (r *reader) oneBeast(from, i int) bool {
	for n := i - 1; n >= max(from, i-8); n-- {
		if r.tok(n-2).tag == ofWord && r.beast(n) || r.tok(n-1).tag == ofWord {
			continue
		}
		if r.beast(n) || r.oneOf(n, "one") {
			return r.oneOf(n, "cow", "heifer", "calf", "ewe", "lamb", "steer", "bullock", "goat", "one", "hogget", "weanling", "beast", "animal", "milker", "bull", "ram", "tup", "wether", "springer", "yearling", "stag", "hind")
		}
	}
	return false
}

// anyBeast tells whether an animal is named in a run of tokens.
func (r *reader) anyBeast(from, to int) bool {
	for i := from; i < to; i++ {
		if r.beast(i) {
			return true
		}
	}
	return false
}

// beast tells whether a token names an animal.
func (r *reader) beast(i int) bool {
	t := r.tok(i)
	return t.shape == word && (stockOnly[t.text] || t.tag == mobWord && t.text != "stores" && t.text != "pairs" || beastWords[t.text]) && !r.beastThing(i+1) &&
		!(t.text == "milker" && r.oneOf(i-1, "relief", "weekend", "casual", "new", "morning", "evening"))
}

// beastThing tells whether a token makes a thing of the animal before it: a heifer
// shed. "heifer tag 412" is the animal.
func (r *reader) beastThing(i int) bool {
	return beastThings[r.tok(i).text] && !(r.oneOf(i, "tag") && r.tok(i+1).shape == number)
}

// noBeast tells whether a token names what is no animal, of which a sign may be
// told as well: a fence, a tyre, a river, whoever writes.
func (r *reader) noBeast(i int) bool {
	t := r.tok(i)
	if b := r.tok(i - 2); r.oneOf(i-1, "the") && (b.tag == toWord || b.tag == inWord || b.tag == intoWord || b.tag == atWord || b.tag == onWord) {
		return false // where it is: "in the drain", "to the parlour"
	}
	return t.shape == word && (t.tag == troubleWord || t.tag == grassWord || vehicleWords[t.text] || thingWords[t.text])
}

// noSign tells whether a sign from i to k is denied, feared, a product's or in
// the past.
func (r *reader) noSign(from, i, k int) bool {
	for n := from; n < i; n++ {
		if r.tok(n).shape == mark {
			from = n + 1
		}
	}
	for n := i - 1; n >= max(from, i-3) && r.tok(n).shape == word; n-- {
		if r.tok(n).tag == padMark && (r.anyPaddock || n == i-1) {
			return true // a paddock's name
		}
	}
	if r.denial(from, i) || r.oneOf(i-1, "for", "against") || signThings[r.tok(k).text] {
		return true
	}
	for n := max(from, i-8); n < i; n++ {
		if r.oneOf(n, "if", "unless", "vaccinate", "vaccinated", "vaccinating", "dose", "dosed", "dosing", "prevent", "case", "jab", "treated", "treat", "spray", "before") {
			return true
		}
	}
	last := r.tok(k - 1).text
	next := r.tok(k)
	switch {
	case r.oneOf(i, "roaring", "roars", "bellows", "bellowing", "bellowed") && r.oneOf(i-1, "bull", "bulls", "is") && r.hasText(from, i, "bull"):
		return true
	case feedVerbs[last]:
		return next.shape == number || r.oneOf(k, "the", "it", "this", "that", "them", "down", "out", "much", "those", "all", "into", "from", "grass", "stalks", "to", "there") || r.padAhead(k)
	case last == "over" || last == "about":
		return r.oneOf(k, "the", "a", "to", "that", "into")
	case last == "moved":
		return k < len(r.toks) && next.shape != mark && !r.oneOf(k, "since", "all", "in", "from")
	case last == "blood":
		return r.oneOf(k, "test", "tests", "tested", "testing", "sample", "samples", "moon", "pressure", "bowl", "orange")
	case last == "breathing":
		return r.oneOf(k, "space", "room", "down", "fine", "ok", "normal", "normally", "easy")
	case last == "fits":
		return r.oneOf(k, "in", "into", "the", "well", "on")
	case last == "shakes" || last == "shaking":
		return r.oneOf(k, "hands", "off", "their", "her")
	case last == "back" && next.tag == ofWord:
		return true
	case last == "stand":
		return r.oneOf(k, "the", "this", "that", "it", "for", "him", "her", "them")
	case last == "down" && (r.oneOf(i-1, "bring", "take") || next.tag == toWord || next.tag == intoWord || r.oneOf(k, "the", "a", "that", "well", "hard", "there", "here")):
		return true
	case last == "down" && r.tok(k-2).text == "head":
		return !r.oneOf(i-1, "its", "her", "his", "with") || r.oneOf(k, "grazing", "eating", "munching", "and", "flat") && !r.oneOf(k+1, "not", "wont", "off")
	case last == "feed" || last == "meal":
		return next.tag == padMark || r.oneOf(k, "pad", "trailer", "bin")
	case last == "up" && r.oneOf(k-2, "blew", "blown", "puffed", "blowing"):
		return r.tok(k).tag == troubleWord || r.oneOf(k, "tyre", "tyres", "tire", "the", "balloons")
	case last == "up" || last == "hopping" || last == "side":
		return r.oneOf(k, "to", "mad", "of", "over", "the", "into", "on", "past", "onto")
	case last == "stiff" || last == "flat" || last == "out" || last == "dull":
		return r.content(i)
	}
	return false
}

// content tells whether stock lie about and are well, from the mark before a token
// to its sentence's end: "chewing the cud".
func (r *reader) content(i int) bool {
	n := i
	for n > max(0, i-8) && !r.endsSentence(n-1) && r.tok(n-1).text != "," {
		n--
	}
	for ; n < i+12 && !r.endsSentence(n); n++ {
		if r.oneOf(n, "chewing", "cudding", "content", "happy", "fine", "grand", "sun", "resting", "sunbathing", "full", "grazing", "eating", "milking", "day") && !r.oneOf(n-1, "not") {
			return true
		}
	}
	return false
}

// lostStock reads "lost a ewe overnight": an animal that died.
//
//	lost = "lost" ( "a" | number ) [ word ] animal ( end | when | where )
func (r *reader) lostStock(from, to int) bool {
	for i := from; i < to; i++ {
		if !r.oneOf(i, "lost") || !(r.oneOf(i+1, "a", "an", "another", "the") || r.several(i+1)) {
			continue
		}
		k := i + 2
		for k < i+5 && k < to && !r.beast(k) && r.tok(k).shape == word {
			k++
		}
		if n := r.tok(k + 1); k < to && r.beast(k) && (k+1 >= to || n.shape == mark || n.tag == inWord || n.tag == atWord || n.tag == nightWord || n.tag == lastWord || n.tag == thisWord ||
			r.oneOf(k+1, "overnight", "to", "with", "today", "yesterday", "from", "during", "and", "on")) {
			return !r.isOver(from, to)
		}
	}
	return false
}

// vetCalled reads a call for the vet to an animal or a paddock, now: "need the
// vet for a cow in 11". One that is booked is none.
func (r *reader) vetCalled(from, to int) bool {
	at, ok := r.has(from, to, wordSetVet)
	if !ok {
		return false
	}
	called, where := false, false
	if r.opensQuestion(from) {
		return false
	}
	for i := from; i < to; i++ {
		t := r.tok(i)
		switch {
		case t.tag == tomorrowWord, t.tag == weekdayWord, t.tag == nextWord, t.tag == monthName, bookedVet[t.text], t.tag == negWord, t.tag == condWord:
			return false
		case r.oneOf(i, "need", "needs", "needed", "ring", "call", "get", "send", "phone", "wanted", "needing", "wants") && i < at+3 && i > at-4:
			called = true
		case r.beast(i):
			where = true
		case t.tag == inWord:
			_, pad := r.alarmPlace(i)
			where = where || pad
		}
	}
	return called && where && !r.isOver(from, to)
}

var (
	wordSetVet = wordSet(`vet vets`)
	bookedVet  = wordSet(`scan scanning test testing tb booked invoice bill dehorn castrate pd certificate cert pay meds medicine order script visit number plan later week`)
	beastWords = wordSet(`milker animal animals youngstock friesian jersey hereford angus ewelamb sow sows pig pigs pony horse horses foal`)
	// beastThings make a thing of the animal before them.
	beastThings = wordSet(`shed trough pad feed milk tag tags price sale trailer crush race yard ring box bell collar cake nuts feeder feeders pen pens house dung muck paddock pdk field track lane stew chops leg mince soup`)
	thingWords  = wordSet(`i im ive me my we tyre tire tyres phone battery river creek drain stream roof shed post posts wall hose pipe hedge hedges ditch mixer baler mower engine
		dad mum boss driver lad contractor neighbour grass clover sward crop tank parlour machine sprayer drone dog chain bolt radio kettle head-gate car jeep weather wind rain fert price`)
	signThings = wordSet(`vaccine vaccines vaccination spray dose doses drench drenched bath baths footbath jab jabs injection injections tablets bottles oil risk powder tubes bottle mixture medicine
		bolus season kit alert test tests sample samples protocol`)
	linkWords = wordSet(`is are was were has have had a an the and of them em those these bit very really pretty quite looks looking look seems seem seemed looked gone went got getting been being
		cold belly side sides flank stomach gut lying just still there theres both now all badly awful fierce so feeling acting also on out down that who which with its her their his some after as fairly totally this morning today found over again`)
	feedVerbs = wordSet(`eating eat eaten drinking drink suck feeding`)
	aimedAt   = wordSet(`about around for at after to over across because when while`)
)

// namesIllness tells whether a sign of illness stands in what may be a name: no
// paddock is called Milk Fever.
func (r *reader) namesIllness(from, to int) bool {
	for i := from; i < to; i++ {
		list := signsOf[r.tok(i).text]
		for n := range list {
			if _, ok := r.signAt(&list[n], i, to); ok {
				return true
			}
		}
	}
	return false
}
