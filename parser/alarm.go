package parser

import (
	"strings"

	"leafround/core/entry"
)

// alarm reads a message about animals that look ill or a person who may be
// hurt, before anything else is read in it. A person comes first.
func (r *reader) alarm(from, to int) (outcome, bool) {
	if _, key := r.has(from, to, alarmKeys); !key && !r.signsTold(from, to) && !r.harmSaid(from, to) {
		return outcome{}, false
	}
	kind := r.alarmKind(from, to)
	if kind == "" && r.calls(from, to) {
		return outcome{ask: &entry.Ask{Reason: "Is somebody hurt? Then call the emergency number first: I call nobody. What has happened?"}}, true
	}
	if kind == "" && !r.wellAgain(from, to) {
		return outcome{}, false
	}
	if list, ok := r.besideAlarm(from, to, kind); ok {
		return outcome{entries: list}, true
	}
	n := r.alarmNote(from, to, kind)
	n.Text = strings.TrimSpace(r.text)
	return outcome{entries: []entry.Entry{n}}, true
}

// alarmNote is the note of an alarm told in a run of tokens.
func (r *reader) alarmNote(from, to int, kind entry.Alarm) entry.Note {
	n := entry.Note{Text: strings.TrimSpace(r.source(from, to)), Alarm: kind}
	for i := from; i < to && n.Paddock == ""; i++ {
		n.Paddock, _ = r.alarmPlace(i)
	}
	if n.Paddock == "" {
		n.Paddock = r.alarmEdge(from, to)
	}
	for i := from; i < to && n.Paddock == ""; i++ {
		if p, ok := r.onePad(i, false); ok && p.known && r.tok(i).shape == word && r.tok(i).tag != mobWord && (r.joins(i-1) && r.joins(p.next) || p.next == to) {
			n.Paddock = p.name // "bloat in the milkers, well field, 2 down"
		}
	}
	for i := from; i < to; i++ {
		if m, k := r.mob(i); k > i && m != "" {
			n.Mob = m
			break
		}
	}
	return n
}

// alarmEdge gives the paddock that an alarm begins or ends with: "12: cow down", "hill
// has a lame ewe", "ewe lame, 12". "12 heifers lame" are so many.
func (r *reader) alarmEdge(from, to int) string {
	from, to = r.trim(from, to)
	if p, ok := r.onePad(from, false); ok && p.known && p.next < to {
		k := p.next
		if r.oneOf(k, ":", ",", "-", "has", "got", "with", "theres") || r.oneBeast(k, k+1) || r.downThere(from, to) || r.tok(from).shape == word && r.beast(k) {
			return p.name
		}
	}
	k := to - 1
	if p, ok := r.onePad(k, false); ok && p.known && p.next == to && k > from+1 && !r.beast(k-1) && r.tok(k-1).shape == word != (r.tok(k-1).text == ",") && !r.oneOf(k-1, "tag", "number", "no", "since", "after", "before", "by", "about", "ring", "call") {
		return p.name
	}
	return ""
}

// calls tells whether somebody calls for help from a paddock.
func (r *reader) calls(from, to int) bool {
	for i := from; i < to; i++ {
		if !r.oneOf(i, "help") {
			continue
		}
		_, place := r.alarmPlace(i + 1)
		return place || r.oneOf(i-1, "need", "send") && r.oneOf(i+1, "now", "quick", "quickly", "asap", "urgently", "here")
	}
	return false
}

// alarmPlace gives the paddock where it happens: one that a preposition or a
// mark announces.
func (r *reader) alarmPlace(i int) (string, bool) {
	t := r.tok(i)
	checked := r.oneOf(i, "check", "checked", "checking", "past", "through", "to", "into", "visited")
	if !checked && t.tag != inWord && t.tag != padMark && t.tag != ofWord && !r.oneOf(i, "along", "near", "beside", "behind", "between", "around", "beyond") && t.tag != onWord && t.tag != atWord && t.text != "by" && t.tag != fromWord {
		return "", false
	}
	j := i
	if t.tag != padMark {
		j++
	}
	if r.tok(j).text == "the" {
		j++
	}
	p, ok := r.onePad(j, true)
	if !ok || !p.known || r.tok(j).tag == mobWord || checked && r.tok(j).shape != word {
		return "", false
	}
	return p.name, true
}

var (
	illWords = wordSet(`bloat bloated bloating bloaty staggers staggering wobbly wobbling downer downers scouring scour scours
		poorly convulsing convulsions fitting seizure seizures collapsed collapsing frothing blown lame limping calving
		eczema tetany mastitis sick ill crook poisoned poisoning trembling shaking twitching twitchy unsteady unwell dead dying
		prolapse prolapsed flystrike choking swollen bleeding panting gasping wheezing coughing stiff cast lethargic drooling dopey fevered feverish`)
	deadWords = wordSet(`dead dying`)
	hurtWords = wordSet(`hurt injured unconscious bleeding trapped pinned crushed kicked ambulance concussed electrocuted
		fell fallen rolled flipped overturned collapsed`)
	personWords = wordSet(`he she hes shes him her i im me someone somebody dad mum boss driver worker lad kid boy girl
		man woman mate him staff neighbour relief milker contractor`)
	vehicleWords = wordSet(`forklift telehandler loader digger truck trailer bike quad motorbike tractor ute atv buggy fourwheeler wheeler`)
	stockWords   = wordSet(`cow cows heifer heifers calf calves bull bulls steer steers ewe ewes lamb lambs hogget hoggets ram rams mob herd
		stock cattle sheep milkers dries yearlings yearling weaners weaner weanling weanlings bullock bullocks wether wethers tup tups springer springers goat goats animal animals beast beasts couple one two three four few some`)
	unharmed = wordSet(`no not never none without isnt arent wasnt werent if if prevent preventing preventer against avoid oil drenched drench vaccinated treated watch watching risk any`)
)

// alarmKeys are all words that any rule of harm looks for: a message with none
// of them is no alarm, and nothing else need be looked at.
var alarmKeys = union(illWords, hurtWords, soreWords, limbs, vehicleWords, tenderParts, burnWords, swallowWords, wordSet(`down breathing breathe knocked passed chest heart
	ambulance man feel up call fire eat eating walk stand feet feed food colour right side back backs sides foaming legs over going gone
	help off well bleeding get`))

// union joins sets of words.
func union(sets ...map[string]bool) map[string]bool {
	all := map[string]bool{}
	for _, s := range sets {
		for w := range s {
			all[w] = true
		}
	}
	return all
}

// soreWords tell of a person unless an animal is named before them; limbs are a
// person's.
var (
	soreWords = wordSet(`hurt injured unconscious concussed kicked gored trampled electrocuted`)
	limbs     = wordSet(`arm leg wrist ankle rib ribs collarbone shoulder hand foot finger fingers knee head`)
)

// alarmKind looks for words of harm near words for who is harmed.
func (r *reader) alarmKind(from, to int) entry.Alarm {
	if (r.tok(to).text == "?" || r.tok(to-1).text == "?" && r.sentenceEnd(from, to) == to-1) && r.asksAdvice(from) {
		return ""
	}
	if r.personHurt(from, to) {
		return entry.AlarmPerson
	}
	if r.stockIll(from, to) {
		return entry.AlarmStock
	}
	return ""
}

// asksAdvice tells whether a question is after advice: "what is good for bloat?",
// "should I worry about it in 9?". Whether stock are ill is no such question.
func (r *reader) asksAdvice(from int) bool {
	for i := from; r.tok(i).shape != end; i++ {
		if r.oneOf(i, "theres", "there", "got", "have", "ive", "weve", "one", "two", "couple") || r.tok(i).text == "a" && r.beast(i+1) {
			return false
		}
	}
	return r.opensQuestion(from) && (r.tok(from).tag == whWord || r.oneOf(from, "should", "can", "could", "would", "do") && r.oneOf(from+1, "i", "we", "you"))
}

// has tells whether a token of a range is in a set, and where.
func (r *reader) has(from, to int, set map[string]bool) (int, bool) {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word && set[t.text] {
			return i, true
		}
	}
	return 0, false
}

// personHurt tells whether somebody may be hurt: an accident with a vehicle, or
// harm said of a person.
func (r *reader) personHurt(from, to int) bool {
	for i := from; i < to; {
		end := r.sentenceEnd(i, to)
		if r.hurtIn(i, end) {
			return true
		}
		i = end + 1
	}
	return false
}

// hurtIn tells whether one sentence tells of it.
func (r *reader) hurtIn(from, to int) bool {
	if r.splashed(from, to) || r.befallen(from, to) {
		return true
	}
	_, stock := r.has(from, to, stockOnly)
	_, person := r.has(from, to, personWords)
	_, vehicle := r.has(from, to, vehicleWords)
	text := r.spaced(from, to)
	vehicle = vehicle || strings.Contains(text, " side by side ")
	if vehicle && (r.offVehicle(from, to) || containsAny(text, " rolled ", " tipped ", " flipped ", " under the ", " crashed ", " overturned ", " gone over ", " accident ", " pinned ", " trapped ", " upside down ", " turned over ", " rolled over ", " went over ", " on its side ", " under it ")) {
		return true
	}
	if containsAny(text, " not breathing ", " cant breathe ", " knocked out ", " passed out ", " broken leg ", " broken arm ", " chest pain ", " chest pains ", " heart attack ", " call an ambulance ", " ambulance on ", " ambulance is ", " call 111 ", " call 999 ", " call 911 ", " call 000 ", " call 112 ", " is on fire ", " fire in the ", " house on fire ", " shed on fire ", " need an ambulance ", " kicked in the head ", " unconscious ", " electrocuted ", " cant feel ", " hit his head ", " hit her head ", " bleeding badly ") && !stock {
		return true
	}
	if strings.Contains(text, " cant get up ") && !stock && !containsAny(text, " get up the ", " get up to ", " get up there ", " get up early ") {
		return true
	}
	if k, hit := r.has(from, to, soreWords); hit && !r.denial(from, k) && !r.oneOf(k+1, "off", "on") && !(r.oneOf(k+1, "in") && r.tok(k+2).text != "the") {
		if at, real := r.has(from, to, stockOnly); !real || at > k && !(at == k+1 && !person) {
			return true // "Liz is hurt", "Tom got kicked by a cow"
		}
		if containsAny(text, " kicked me ", " kicked him ", " kicked her ", " got me ", " got him ", " trampled me ", " crushed me ", " stood on me ") {
			return true
		}
	}
	if _, limb := r.has(from, to, limbs); limb && containsAny(text, " broken ", " broke ", " broke his ", " smashed ", " cut badly ", " crushed ", " cut her ", " cut his ", " cut my ", " burnt ") && (person && !stock || !stock && containsAny(text, " his ", " her ") || containsAny(text, " me ", " my ")) {
		return true
	}
	if k, hit := r.has(from, to, hurtWords); hit && person && !stock && !r.denial(from, k) {
		return r.tok(k).text != "rolled" && r.tok(k).text != "fell" && r.tok(k).text != "fallen" || vehicle || containsAny(text, " he fell ", " she fell ", " has fallen ")
	}
	return containsAny(text, " ive been kicked ", " got kicked ", " been kicked ", " got crushed ", " been crushed ", " got trampled ", " been trampled ", " been gored ") && person
}

var stockOnly = wordSet(`cow cows heifer heifers calf calves steer steers ewe ewes lamb lambs hogget hoggets ram rams mob herd stock cattle sheep milkers dries
	bull bulls bullock bullocks weanling weanlings weaner weaners yearling yearlings wether wethers tup tups stag stags hind hinds springer springers goat goats beast beasts`)

// offVehicle reads "came off the bike" and "fell off his quad".
func (r *reader) offVehicle(from, to int) bool {
	for i := from; i < to; i++ {
		if !r.oneOf(i, "off") || !r.oneOf(i-1, "came", "come", "fell", "fallen", "thrown", "been", "bucked") {
			continue
		}
		if vehicleWords[r.tok(r.over(i+1, "the", "his", "her", "my", "a", "that", "old", "farm", "of")).text] {
			return true
		}
	}
	return false
}

// denial tells whether a word of denial stands shortly before a token.
func (r *reader) denial(from, k int) bool {
	for i := max(from, k-3); i < k; i++ {
		if unharmed[r.tok(i).text] {
			return true
		}
	}
	return false
}

// stockIll tells whether animals look ill, in the whole of a message or in one or two
// of its sentences: what else it tells, of leaves and tillers, takes nothing from
// it. That all is well again may stand in the next sentence, where it names no paddock.
func (r *reader) stockIll(from, to int) bool {
	if ill, sure := r.illIn(from, to); sure || ill && !r.isOver(from, to) {
		return true
	}
	for a := from; a < to; {
		b := r.partEnd(a, to)
		if a == from && b >= to {
			return false // one sentence
		}
		next := r.partEnd(min(b+1, to), to)
		if ill, sure := r.illIn(a, b); sure || ill && !r.isOver(a, b) && (b+1 >= to || r.namesPadIn(b+1, next) || !r.isOver(b+1, next)) {
			return true
		}
		if _, dead := r.has(b, next, deadWords); dead && r.anyBeast(a, b) && !r.isOver(a, next) {
			if ill, _ := r.illIn(a, next); ill {
				return true // "heifers in 12. found in the thistles, dead"
			}
		}
		a = b + 1
	}
	return false
}

// partEnd gives the mark or line's end that ends a sentence from i.
func (r *reader) partEnd(i, to int) int {
	for i < to && !r.endsSentence(i) {
		i++
	}
	return i
}

// namesPadIn tells whether a paddock is named in a run of tokens.
func (r *reader) namesPadIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.padAhead(i) {
			return true
		}
	}
	return false
}

// illIn tells whether a run of tokens says that animals are ill; sure tells of signs
// that are told as they are seen.
func (r *reader) illIn(from, to int) (ill, sure bool) {
	var a about
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape != word || !illWords[t.text] {
			continue
		}
		if !a.known {
			a = r.aboutStock(from, to)
		}
		if r.illWord(from, i, &a) {
			return true, false
		}
	}
	sure = r.signsTold(from, to) || r.numberIll(from, to)
	return sure || r.animalDown(from, to), sure
}

// numberIll reads "3 blown up in 19": so many of the stock, though nobody says
// which.
func (r *reader) numberIll(from, to int) bool {
	for i := from + 1; i < to; i++ {
		t, b := r.tok(i), r.tok(i-1)
		if t.shape != word || !illWords[t.text] || r.oneOf(i, "stiff", "calving", "dead", "dying", "ill", "shaking", "feverish", "bleeding") ||
			!(b.shape == number && !b.decimal && b.value < 30 || b.tag == numberWord && b.sense > 0 || r.oneOf(i-1, "couple", "few")) {
			continue
		}
		k := r.over(i+1, "up", "over", "again", "out")
		if n := r.tok(k); n.tag == inWord && n.shape == word || n.tag == onWord && n.shape == word || n.shape == end || n.shape == mark && n.text != ":" && n.text != "/" {
			return true
		}
	}
	return false
}

// illWord tells whether a word tells of an illness in a message.
func (r *reader) illWord(from, k int, a *about) bool {
	w := r.tok(k).text
	if r.denial(from, k) || signThings[r.tok(k+1).text] || r.oneOf(k+1, "capsule", "capsules", "season", "spores") {
		return false
	}
	switch {
	case (w == "sick" || w == "ill" || w == "crook") && (r.oneOf(k-1, "off", "home", "called", "calling", "ringing", "rang") || r.someone(from, k) && !r.illBefore(from, k)):
		return false // "dave is off sick"
	case w == "ill" && (strings.Contains(r.source(k, k+1), "'") || r.oneOf(k+1, "get", "go", "do", "be", "bring", "move", "put", "take", "have", "see", "let", "tell", "come", "drop", "check", "count", "shift", "try", "ring", "give", "run", "send", "need")):
		return false // "then I'll get the cows in"
	case surelyIll[w]:
		return true
	case (w == "dead" || w == "dying") && a.oneDead:
		return !a.leaves && !a.tillers
	case stockOnly[r.tok(k+1).text] && r.beastThing(k+2), (w == "dead" || w == "dying") && (r.deadThing(k) || r.deadPlant(from, k)):
		return false
	case w == "dead" && r.oneOf(k+1, "one", "ones") && r.oneOf(k-2, "found", "seen", "got", "theres"):
		return true
	case w == "dead" || w == "dying":
		return a.beast && !a.leaves && !a.deadGrass
	case (w == "lame" || w == "limping") && r.tok(k-1).shape == number && !r.tok(k-1).decimal:
		return true // tag 312 lame
	case w == "calving":
		return a.calving
	case w == "cast":
		return a.beast
	case w == "blown" && r.oneOf(k+1, "clear", "down", "over", "off", "away", "out", "flat"):
		return r.beast(k-1) && r.oneOf(k+1, "out")
	}
	return a.beast || a.stock && w != "stiff" && w != "ill" && !a.leaves && !a.tillers
}

// about is what else a message speaks of, where it holds a word of illness.
type about struct {
	known     bool
	beast     bool // an animal is named
	stock     bool // or what may count animals
	oneDead   bool // so many are dead
	leaves    bool
	tillers   bool
	deadGrass bool // what is dead may be grass, or a battery
	calving   bool // something is wrong with a calving
}

// aboutStock reads it once for all words of illness in a run of tokens.
func (r *reader) aboutStock(from, to int) about {
	text := r.spaced(from, to)
	_, stock := r.has(from, to, stockWords)
	return about{known: true, beast: r.anyBeast(from, to), stock: stock,
		oneDead:   containsAny(text, " one dead ", " one is dead ", " one was dead ", " two are dead ", " two dead ", " 1 dead ", " 2 dead ", " 3 dead ", " another dead "),
		leaves:    containsAny(text, " leaf ", " leaves "),
		tillers:   containsAny(text, " tiller ", " tillers "),
		deadGrass: containsAny(text, " base ", " tips ", " tip ", " dead matter ", " battery "),
		calving:   containsAny(text, " trouble ", " stuck ", " cant calve ", " bad calving ")}
}

// surelyIll are illnesses of stock whatever else is said.
var surelyIll = wordSet(`bloat staggers tetany bloated wobbly downer downers scouring eczema prolapse prolapsed mastitis flystrike staggering`)

// deadThing tells whether it is a phone or a battery that is dead.
func (r *reader) deadThing(k int) bool {
	for i := k - 1; i >= max(0, k-4) && !r.endsSentence(i); i-- {
		if r.oneOf(i, "phone", "fone", "mobile", "cell", "battery", "torch", "bike", "quad", "ute", "tractor", "radio", "tree", "fence", "line") {
			return true
		}
	}
	return false
}

// spaced gives the words of a range between single spaces.
func (r *reader) spaced(from, to int) string {
	var b strings.Builder
	b.Grow(len(r.source(from, to)) + 2)
	b.WriteByte(' ')
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word || t.shape == number {
			b.WriteString(t.text)
			b.WriteByte(' ')
		}
	}
	return b.String()
}

func containsAny(text string, list ...string) bool {
	for _, s := range list {
		if strings.Contains(text, s) {
			return true
		}
	}
	return false
}
