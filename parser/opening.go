package parser

// Turns of talk are looked for only at the words that open them, so that a word
// that opens none costs one look into a table.

// opening is a turn of phrase with the words that it can begin with.
type opening struct {
	words  map[string]bool
	read   func(*reader, *clause, int) int
	remark bool // what is stepped over is a remark, and no more
}

// openings are tried in order. Their words are told here alone where a reader does
// not need to tell them apart.
var openings = []opening{
	{joinSets(weatherNames, wordSet(`by ahead in before until till til after when as between while`)), (*reader).aroundWeather, false},
	{joinSets(weatherNames, wordSet(`darkness bull cold got was were been being rained hailed snowed blown`)), (*reader).drivenOff, false},
	{wordSet(`you ya ye u yed youd`), (*reader).likened, false},
	{wordSet(`gate gates latch hinge chain wire trough batten strainer fence ballcock pipe hose padlock`), (*reader).mendedThing, false},
	{wordSet(`forager foragers harvester contractor contractors baler balers mower mowers wrapper tedder rake chopper digger vet trailers combine drill sprayer spreader tanker`), (*reader).machineComing, false},
	{wordSet(`one a the few some couple another`), (*reader).boggyBit, false},
	{wordSet(`first second third nth main next last`), (*reader).cutsAhead, false},
	{wordSet(`cant cannot couldnt can could cudnt`), (*reader).unseen, false},
	{wordSet(`meant wanted intended`), (*reader).meantTo, false},
	{wordSet(`left leaving missed missing not didnt havent never`), (*reader).leftPart, false},
	{wordSet(`first earliest`), (*reader).firstGrazing, false},
	{wordSet(`finished completed done cleared`), (*reader).partDone, false},
	{wordSet(`some most few couple bulk`), (*reader).someOfMob, false},
	{wordSet(`emptied tipped poured`), (*reader).emptiedRain, false},
	{wordSet(`flat back`), (*reader).sayingPart, false},
	{wordSet(`anywhere showing visible`), (*reader).closedRemark, false},
	{wordSet(`the new fresh some young`), (*reader).sownWith, false},
	{wordSet(`will ill gonna shall`), (*reader).promise, true},
	{wordSet(`would could can will whoever`), (*reader).errand, true},
	{wordSet(`then after afterwards`), (*reader).gateShut, true},
	{joinSets(wordsOf(negWord), wordsOf(notWord), wordSet(`nobodys nothings`)), (*reader).nobodyPart, false},
	{joinSets(wordsOf(negWord), wordsOf(notWord)), (*reader).standstill, false},
	{joinSets(wordsOf(negWord), wordsOf(notWord)), (*reader).nothingLeft, false},
	{wordSet(`on`), (*reader).wayOf, true},
	{wordSet(`took taken takes`), (*reader).timeTaken, true},
	{wordSet(`ground soil`), (*reader).groundIn, true},
	{wordSet(`by on from off at`), (*reader).readFrom, true},
	{wordSet(`since`), (*reader).firstSince, true},
	{wordSet(`maybe perhaps`), (*reader).perhapsRange, true},
	{wordSet(`off from`), (*reader).seenFrom, true},
	{wordSet(`hope`), (*reader).hopeFor, false},
	{wordSet(`got gotten`), (*reader).gotRoundTo, false},
	{wordSet(`took takes`), (*reader).tookPeople, false},
	{wordSet(`as like`), (*reader).agreedPart, false},
	{wordsOf(doneWord), (*reader).doneBefore, false},
	{joinSets(wordsOf(toppedWord), wordsOf(sowWord), wordSet(`got bought ordered collected fetched mixed put left parked took moved`)), (*reader).otherJob, false},
	{wordSet(`got it was were i we must have just that somehow missed left forgotten dropped wiped rubbed slipped fell fallen`), (*reader).offTheBoard, false},
	{machines, (*reader).machineThrough, false},
	{wordSet(`he she contractor contractors driver lad and`), (*reader).goneBy, false},
	{wordSet(`you take took taken drop clear get got scrap cancel`), (*reader).holdOff, false},
	{wordSet(`rest remainder others other`), (*reader).restLater, true},
	{wordSet(`getting got gotten get`), (*reader).lateTold, true},
	{wordSet(`when if where`), (*reader).whenYouLook, true},
	{wordSet(`when if`), (*reader).whenPassing, true},
	{wordSet(`nobody noone no`), (*reader).gateLeft, true},
	{wordSet(`that this`), (*reader).thatOne, false},
	{wordSet(`they theyd`), (*reader).theyWalked, false},
	{wordSet(`like`), (*reader).simile, false},
	{wordSet(`wont wouldnt doesnt cant couldnt`), (*reader).wontHold, false},
	{wordSet(`got made went headed nipped popped drove ran`), (*reader).wentToCount, false},
	{wordSet(`about around bout roughly circa round abt a shortly just well after before since half`), (*reader).aboutHour, false},
	{wordSet(`went`), (*reader).wentRound, true},
	{wordSet(`drove drive driving walked cycled rode`), (*reader).drovePast, true},
	{wordSet(`closed shut chained tied pulled latched bolted closing shutting`), (*reader).gapClosed, true},
	{wordSet(`nobody noone no`), (*reader).unwritten, true},
	{wordSet(`somebody someone everyone everybody dad mum boss he she they neighbour lads people`), (*reader).opinion, true},
	{wordSet(`where`), (*reader).whereItFell, true},
	{wordSet(`before there`), (*reader).noGrassLeft, true},
	{wordSet(`all everything`), (*reader).allButPart, false},
	{wordSet(`except excepting excluding barring bar minus skipping apart aside other but not just only`), (*reader).exceptPads, false},
	{wordSet(`bar except excepting excluding barring apart aside other minus save less but only all`), (*reader).exceptionPart, false},
	{wordSet(`which that but and sorry i ive we weve nobody never forgot forgotten`), (*reader).unsent, false},
}

// openingsOf gives the turns that a word can open.
var openingsOf = func() map[string][]*opening {
	all := map[string][]*opening{}
	for n := range openings {
		for w := range openings[n].words {
			all[w] = append(all[w], &openings[n])
		}
	}
	return all
}()

// wordsOf gives the words of one part of speech.
func wordsOf(t tag) map[string]bool {
	return wordSet(lexiconTable[t])
}

// openingPart reads a turn of talk.
func (r *reader) openingPart(c *clause, i int) int {
	for _, o := range openingsOf[r.tok(i).text] {
		if k := o.read(r, c, i); k > i {
			if o.remark {
				c.remarks++
			}
			return k
		}
	}
	return i
}
