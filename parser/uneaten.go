package parser

// Who tells how clean stock left a paddock, or how quietly they went, denies
// nothing of the grazing: "left 4cm and not a dung pat's worth of waste
// anywhere", "grazed 6, not a leaf left", "moved to 7, never a bit of bother".

// nothingLeft steps over such a turn behind a grazing that was told.
//
//	nothingLeft = ( ( "not" | "never" | "hardly" ) ( "a" | "one" | "any" ) | "no" | "nothing" ) { word } waste { word }
func (r *reader) nothingLeft(c *clause, i int) int {
	t := r.tok(i)
	if t.shape != word || t.tag != negWord && t.tag != notWord || i == 0 || c.count != nil || c.guard != 0 || !c.blank() && !c.has(actsGraze|actPlace) && c.resid == nil || len(c.pads) > 0 && i < c.pads[0].next {
		return i
	}
	k := i + 1
	switch {
	case r.oneOf(i, "not", "never", "hardly", "barely", "without"):
		if k = r.over(k, "even", "so", "much", "as"); !r.oneOf(k, "a", "an", "one", "any", "much", "anything") {
			return i
		}
		if r.oneOf(k+1, "of", "bit", "chance") && r.oneOf(k+1, "of") || r.oneOf(k+1, "bit") && r.oneOf(k+2, "of") && r.oneOf(k+3, "it", "that", "them") || r.oneOf(k+1, "chance") {
			return i // "not a bit of it", "not one of them went"
		}
	case r.oneOf(i, "no", "nothing", "nowhere"):
	default:
		return i
	}
	waste := r.oneOf(i, "nothing") && (r.oneOf(k, "left", "wasted", "uneaten", "behind", "rejected") || r.tok(k).tag == leftWord)
	for ; k < i+longestPiece; k++ {
		t := r.tok(k)
		if t.shape == end || r.endsSentence(k) || t.text == "," || t.tag == andWord || t.tag == butWord {
			break
		}
		if t.shape == number && !t.glued || t.shape == part || r.padAhead(k) || r.day(k).ok {
			return i
		}
		if _, j := r.mob(k); j > k && !waste || r.oneOf(k, "grazed", "out", "into", "moved", "in", "gone", "went") && r.padAhead(k+1) || t.tag == untilWord {
			return i
		}
		waste = waste || t.shape == word && wasteWords[t.text]
	}
	if !waste {
		return i
	}
	c.remarks++
	return k
}

// wasteWords are what is not left, and what did not happen on the way.
var wasteWords = wordSet(`waste wasted wastage scrap scraps blade blades leaf leaves stalk stalks stem stems tuft tufts clump clumps mess pat pats dung pick bite mouthful uneaten rejected rejection rejects
	bother trouble fuss complaint complaints bellow moo peep sound straggler stragglers damage pugging poaching drama hitch argument murmur soul speck ounce crumb`)
