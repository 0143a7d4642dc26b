package parser

// Beside a report people tell how it came to be late, and with what a job was
// done: "got missed off the board", "drill's been through 28".

// offTheBoard steps over "got missed off the board", "left it off the sheet":
// what was not written down in time happened all the same, and stock left
// nothing where a paddock was left off a list.
//
//	off-the-board = [ "got" | "was" | … ] ( "missed" | "left" | … ) [ place | "it" | … ] [ ( "off" | "from" | … ) [ "the" ] board ]
func (r *reader) offTheBoard(c *clause, i int) int {
	k := r.over(i, "got", "it", "was", "were", "i", "we", "must", "have", "just", "that", "somehow")
	if !r.oneOf(k, "missed", "left", "forgotten", "dropped", "wiped", "rubbed", "slipped", "fell", "fallen") {
		return i
	}
	bare := r.oneOf(k, "missed") && k > i
	k = r.over(k+1, "it", "that", "them", "this", "one", "getting", "being", "put")
	if p, ok := r.onePad(r.over(k, "the", "putting", "paddock"), false); ok && p.known && len(c.pads) == 0 && c.acts == 0 && c.count == nil {
		j := r.over(p.next, "off", "from", "out", "of", "on", "in")
		if j = r.over(j, "the", "my", "our", "last"); j > p.next+1 && boardWords[r.tok(j).text] && r.tok(j).shape == word {
			if len(c.mobs) == 0 {
				c.pads = append(c.pads, p)
			}
			c.remarks++
			return j + 1
		}
	}
	j := r.over(k, "off", "from", "out", "of", "on", "in")
	if j = r.over(j, "the", "my", "our", "last"); j > k && boardWords[r.tok(j).text] && r.tok(j).shape == word {
		c.remarks++
		return j + 1
	}
	if t := r.tok(k); bare && c.says() && r.oneOf(i, "got", "it", "was") && (t.shape == end || t.text == "." || t.shape == newline) {
		c.remarks++
		return k
	}
	return i
}

// boardWords are what a farm writes its days on.
var boardWords = wordSet(`board whiteboard blackboard sheet sheets book books list log record records map app calendar diary chart wall notebook paperwork spreadsheet page`)

// machineThrough reads "drill's been through", "sprayer went over": what the
// machine does was done there.
//
//	machine-through = [ "the" ] machine [ "has" ] [ "just" ] ( "been" | "went" | "gone" ) ( "through" | "over" | … )
func (r *reader) machineThrough(c *clause, i int) int {
	does, ok := machineWork[r.tok(i).text]
	if !ok || len(c.mobs) > 0 {
		return i
	}
	k := i + 1
	if r.tok(k).text == "'" && r.tok(k+1).text == "s" {
		k += 2
	}
	k = r.over(k, "has", "have", "had", "just", "already", "s")
	if !r.oneOf(k, "been", "went", "gone") || !r.oneOf(k+1, "through", "thru", "over", "across", "round", "around", "on", "in", "into") || !r.padAhead(k+2) {
		return i
	}
	c.acts |= does
	return k + 2
}

// machineWork gives what a machine does where it goes.
var machineWork = map[string]act{"drill": actSow, "drills": actSow, "seeder": actSow, "seeders": actSow, "sprayer": actSpray, "sprayers": actSpray,
	"boomspray": actSpray, "tanker": actEff, "tankers": actEff, "topper": actTopped, "toppers": actTopped, "mulcher": actTopped, "mulchers": actTopped}

// machines are its words.
var machines = func() map[string]bool {
	set := map[string]bool{}
	for w := range machineWork {
		set[w] = true
	}
	return set
}()

// goneBy steps over "he was gone again by 9": the contractor left, no stock.
//
//	gone-by = ( "he" | "she" | "contractor" | … ) { word } "gone" [ "again" | "home" | … ] [ "by" hour ]
func (r *reader) goneBy(c *clause, i int) int {
	if len(c.mobs) > 0 {
		return i
	}
	k := r.over(i+1, "was", "were", "had", "is", "and", "all", "back")
	if !r.oneOf(k, "gone") || k == i+1 {
		return i
	}
	k = r.over(k+1, "again", "home", "off", "back")
	if j, ok := r.clock(k); ok {
		c.remarks++
		return j
	}
	if t := r.tok(k + 1); r.oneOf(k, "by", "before") && (t.tag == clockWord || t.shape == word && r.oneOf(k+1, "lunch", "smoko", "breakfast", "tea", "dark", "milking", "dinner")) {
		c.remarks++
		return k + 2
	}
	return i
}

// holdOff reads "take the hold off 5", "get rid of the spray hold on 12": it is
// lifted.
//
//	hold-off = ( "take" | "drop" | … ) [ "the" ] [ reason ] "hold" ( "off" | "on" | "from" )
//	         | ( "take" | "took" ) place "off" [ "the" ] "hold" [ "list" ]
func (r *reader) holdOff(c *clause, i int) int {
	if c.says() || c.guard != 0 {
		return i
	}
	if r.oneOf(i, "you") && r.oneOf(i+1, "can") && r.oneOf(i+2, "take") {
		if k := r.holdOff(c, i+2); k > i+2 {
			return k // "you can take the silage hold off 12"
		}
		return i
	}
	lifts := !r.oneOf(i, "take", "took", "taken")
	k := i + 1
	if r.oneOf(i, "get", "got") {
		if !r.oneOf(k, "rid") || !r.oneOf(k+1, "of") {
			return i
		}
		k += 2
	}
	k = r.over(k, "the", "that", "any", "all")
	if !lifts {
		if p, ok := r.onePad(k, false); ok && p.known && r.oneOf(p.next, "off", "from") {
			if j := r.over(p.next+1, "the", "of", "its"); r.oneOf(j, "hold") && (r.oneOf(j+1, "list", "board") || r.tok(j+1).shape != word || r.tok(j+1).tag == courtesy || r.tok(j+1).tag == forWord || r.when(j+1).ok || r.oneOf(j+1, "now", "again")) || r.oneOf(j, "holds") {
				c.acts |= actRelease
				c.pads = append(c.pads, p)
				return r.over(j+1, "list", "board")
			}
			return i
		}
	}
	why := act(0)
	switch t := r.tok(k); {
	case t.shape != word:
		return i
	case t.tag == sprayWord:
		why = actSpray
	case t.tag == effWord:
		why = actEff
	case t.tag == fertWord:
		why = actFert
	case t.tag == silageWord:
		why = actSilage
	case t.tag == hayWord:
		why = actHay
	case t.tag == wetWord || t.tag == dampWord:
		why = actWet
	}
	if why != 0 {
		k++
	}
	if !r.oneOf(k, "hold", "holds") || !r.oneOf(k+1, "off", "from") && !(lifts && r.oneOf(k+1, "on")) || !r.padAhead(k+2) {
		return i
	}
	c.acts |= actRelease | why
	return k + 2
}

// hopeFor reads "hope we get 20 mm", "hope for rain": it is still to come. What
// somebody hopes of the reader, or of what was, is talk.
func (r *reader) hopeFor(c *clause, i int) int {
	if !r.oneOf(i+1, "we", "it", "for", "to", "theres", "there", "they", "its", "itll") {
		return i
	}
	c.guard |= guardPlan
	return i + 1
}

// tookPeople steps over "took three of us and the dog": who was needed for it.
func (r *reader) tookPeople(c *clause, i int) int {
	n, k := r.whole(i + 1)
	if k == i+1 || n < 1 || n > 12 || !r.oneOf(k, "of") || !r.oneOf(k+1, "us", "them") {
		return i
	}
	k += 2
	if j := r.over(k, "and", "plus", "the", "a", "both", "two"); j > k && r.oneOf(j, "dog", "dogs", "bike", "quad", "ute", "kids", "missus", "neighbour", "neighbours") {
		k = j + 1
	}
	c.remarks++
	return k
}
