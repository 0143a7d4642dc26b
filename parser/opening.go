package parser

// Turns of talk are looked for only at the words that open them, so that a word
// that opens none costs one look into a table.

// opening is a turn of phrase with the words that it can begin with.
type opening struct {
	words map[string]bool
	read  func(*reader, *clause, int) int
}

// openings are tried in order.
var openings = []opening{
	{joinSets(weatherNames, wordSet(`by ahead in before until till til after when as between while`)), (*reader).aroundWeather},
	{joinSets(weatherNames, wordSet(`darkness bull cold got was were been being rained hailed snowed blown`)), (*reader).drivenOff},
	{wordSet(`meant wanted intended`), (*reader).meantTo},
	{wordSet(`left leaving missed missing not didnt havent never`), (*reader).leftPart},
	{wordSet(`first earliest`), (*reader).firstGrazing},
	{wordSet(`finished completed done cleared`), (*reader).partDone},
	{wordSet(`some most few couple bulk`), (*reader).someOfMob},
	{wordSet(`emptied tipped poured`), (*reader).emptiedRain},
	{wordSet(`flat back`), (*reader).sayingPart},
	{wordSet(`anywhere showing visible`), (*reader).closedRemark},
	{wordSet(`the new fresh some young`), (*reader).sownWith},
	{wordSet(`will ill gonna shall`), (*reader).promise},
	{wordSet(`would could can will whoever`), (*reader).errand},
	{wordSet(`then after afterwards`), (*reader).gateShut},
	{joinSets(wordsOf(negWord), wordsOf(notWord), wordSet(`nobodys nothings`)), (*reader).nobodyPart},
	{joinSets(wordsOf(negWord), wordsOf(notWord)), (*reader).standstill},
	{joinSets(wordsOf(negWord), wordsOf(notWord)), (*reader).nothingLeft},
	{wordSet(`on took taken takes ground soil by from off at since maybe perhaps`), (*reader).byway},
	{wordSet(`hope`), (*reader).hopeFor},
	{wordSet(`got gotten`), (*reader).gotRoundTo},
	{wordSet(`took takes`), (*reader).tookPeople},
	{wordSet(`as like`), (*reader).agreedPart},
	{wordsOf(doneWord), (*reader).doneBefore},
	{joinSets(wordsOf(toppedWord), wordsOf(sowWord), wordSet(`got bought ordered collected fetched mixed put left parked took moved`)), (*reader).otherJob},
	{wordSet(`got it was were i we must have just that somehow missed left forgotten dropped wiped rubbed slipped fell fallen`), (*reader).offTheBoard},
	{machines, (*reader).machineThrough},
	{wordSet(`he she contractor contractors driver lad and`), (*reader).goneBy},
	{wordSet(`you take took taken drop clear get got scrap cancel`), (*reader).holdOff},
	{wordSet(`rest remainder others other`), (*reader).restLater},
	{wordSet(`getting got gotten get`), (*reader).lateTold},
	{wordSet(`when if where`), (*reader).whenYouLook},
	{wordSet(`when if`), (*reader).whenPassing},
	{wordSet(`nobody noone no`), (*reader).gateLeft},
	{wordSet(`that this`), (*reader).thatOne},
	{wordSet(`they theyd`), (*reader).theyWalked},
	{wordSet(`like`), (*reader).simile},
	{wordSet(`wont wouldnt doesnt cant couldnt`), (*reader).wontHold},
	{wordSet(`got made went headed nipped popped drove ran`), (*reader).wentToCount},
	{wordSet(`about around bout roughly circa round abt a shortly just well after before since half`), (*reader).aboutHour},
	{wordSet(`went drove drive driving walked cycled closed shut chained tied pulled latched bolted closing shutting nobody noone no
		somebody someone everyone everybody dad mum boss he she they neighbour lads people where before there`), (*reader).besideTold},
	{wordSet(`bar except excepting excluding barring apart aside other minus save less but only all`), (*reader).exceptionPart},
	{wordSet(`which that but and sorry i ive we weve nobody never forgot forgotten`), (*reader).unsent},
}

// openingsOf gives the turns that a word can open.
var openingsOf = func() map[string][]func(*reader, *clause, int) int {
	all := map[string][]func(*reader, *clause, int) int{}
	for _, o := range openings {
		for w := range o.words {
			all[w] = append(all[w], o.read)
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
	for _, read := range openingsOf[r.tok(i).text] {
		if k := read(r, c, i); k > i {
			return k
		}
	}
	return i
}
