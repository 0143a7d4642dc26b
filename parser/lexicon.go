package parser

import "strings"

// tag is what the lexicon says of a word: the part it can play in a message.
type tag uint8

// The parts that words play.
const (
	unknown  tag = iota
	noise        // letters by the dozen: no word
	filler       // carries nothing: the, has, just, now
	courtesy     // please, thanks, hi
	remark       // harmless beside a statement: weather, looks, people at work
	padMark      // p, pdk, paddock, field
	mobWord      // milkers, heifers: a herd in common use
	looseMob     // cows, herd, mob: name no mob unless registered

	inWord
	intoWord
	onWord
	toWord
	fromWord
	outWord
	offWord
	ofWord
	atWord
	forWord
	withWord
	andWord
	plusWord
	butWord
	thenWord

	putWord    // put, turned: past or a wish
	wentWord   // went, gone, came
	moveWord   // move, shift: may be an order
	movedWord  // moved, shifted
	movingWord // moving, putting: may not have happened yet
	grazeWord  // graze: an order or a wish
	grazedWord
	grazingWord
	doneWord // done, finished
	leftWord
	residWord

	untilWord
	sinceWord
	againWord
	agoWord

	cutWord
	silageWord
	hayWord
	baleWord
	toppedWord
	topWord
	mowWord

	canopyWord
	closedWord
	closeWord
	shutWord
	lockWord
	openWord
	releaseWord
	okWord
	holdWord

	sprayWord
	fertWord
	effWord
	sowWord
	wetWord
	dampWord
	dryWord
	cropWord

	rainWord
	gaugeWord
	tempWord
	soilWord
	airWord
	minWord
	maxWord
	frostWord

	noteWord
	cmUnit
	mmUnit
	inchUnit
	pointUnit
	clickUnit
	kgUnit
	haUnit
	acreUnit
	dayUnit
	weekUnit
	monthUnit
	hourUnit
	headUnit
	leafUnit
	tillerUnit
	degreeUnit
	strangeUnit // litres, bales, dollars: its number is none of ours

	averageWord
	allWord
	onlyWord
	eachWord
	reproWord
	daughterWord
	remnantWord
	timesWord
	yellowWord
	leafWord // oldest, tip, base: what goes yellow
	numberWord
	pointWord
	partWord // half, quarter, third

	notWord
	negWord
	planWord
	condWord
	cuttingWord // cutting, topping: may still be to do
	nearWord    // nearly, over: not quite the number that follows
	wishWord
	hearWord
	hedgeWord
	jokeWord
	whWord
	auxWord
	nextWord
	readyWord

	todayWord
	yesterdayWord
	tomorrowWord
	tonightWord
	nightWord
	daytimeWord // morning, arvo, am
	clockWord   // noon, milking
	lastWord
	thisWord
	weekdayWord
	monthName
	ordinalWord
	grassWord
	troubleWord // trough, fence, leaking: worth a note
)

// meaning is a word's part, with its number where it has one: a weekday, a
// month, a number in words (times four, for quarters), a grass.
type meaning struct {
	tag   tag
	value int16
}

// lexiconTable holds the words that the program knows, by part.
var lexiconTable = map[tag]string{
	filler: `the a an we weve i ive im he hes she shes they theyve theyre theyd it its was were is are been be being has
		have had having got just now my our your their his her us me you them that those these some so here there also
		too very really quite bit already well right as current currently finally straight back away up down 
		through by actually far per everyone everybody both whole lot lots rest remaining along across anyway bot
		leafround fyi re ref via incl including do does job jobs bunch whilst while during entry log logged
		logging record recorded update updated paddy status stock animals made carted spread applied girls ladies boys lads ours theirs team guys
		folks same anymore yet ye`,
	courtesy: `please pls plz thanks thx ta cheers thankyou hi hello hey gday kia ora morena sorry soz mate mates yeah yep yup
		aye righto rightio roger oh ah um er okay kk sure boss dear kindly regards mam maam madam sir welcome thank tks tnx howdy hiya heya yo
		gidday goodday`,
	remark: `anywhere instead dry pit clamp rushes protected em spot raining rainy windy cold hot sunny muddy warm cool misty foggy drizzle drizzly hail snow snowing wind damp
		sodden looks looking look nice good great beautiful bad poor patchy thin thick dense short long tall lush
		clover clovery weedy weeds grass grassy cover feed green greener grown growth growing grow stalky stemmy clumpy
		rank ragged even uneven tidy clean messy cleaned tidied stressed slow quick quickly fast early late little
		lovely pretty cracking mint bloody damn absolutely walked walk walking counted counting checked checking pulled took
		taken found measured sampled gateway hedge end ends side corner middle near northern southern eastern
		western milking milkings lunch tea smoko breakfast dinner brekkie feeding happy content quiet full hungry
		behind ahead steady fine contractor contractors dad mum boy lad fella missus nephew brother son uncle myself tractor bike quad ute dog dogs count hurry rush properly nicely
		slightly mostly hard lightly wee big small smaller bigger best better worse worst different usual normal
		usually surprisingly still though tho heaps plenty dew frosty sloppy soft firm spongy holding heavy light
		rough roughish plate platemeter plated rising lighter darker dark pale jug label labels container packet weather eyeballed eyeballing grand sound class savage perfect ideal decent mighty brilliant powerful tight spotless twins triplets storm storms thunderstorm thunderstorms fierce desperate shocking woeful proper thermometer shouting bleating mooing bawling roaring`,
	padMark: `pdock padock paddok padddock paddck paddocck p pdk pdck pad padd padds pads paddock paddocks field fields fld flds cell cells pdks pk pasture pastures`,
	mobWord: `milkers heifers calves bulls steers ewes lambs hoggets rams dries youngstock weanlings culls springers finishers stores lactating replacements carryovers stockers feeders pairs yearlings weaners springers
		bullocks wethers tups stags hinds goats replacements  `,
	looseMob: `cows cow herd herds mob mobs group cattle sheep milker heifer calf bull steer ewe lamb hogget ram bullock weanling weaner yearling wether tup stag hind goat`,
	inWord:   `in inside`, intoWord: `into`, onWord: `on onto`, toWord: `to`, fromWord: `from frm`, outWord: `out outa outta`, offWord: `off`, ofWord: `of`,
	atWord: `at`, forWord: `for`, withWord: `with w wi`, andWord: `and n nd`, plusWord: `plus`, butWord: `but except bar excluding`, thenWord: `then after`,
	putWord:    `put turned popped chucked stuck`,
	wentWord:   `went gone came come whent`,
	moveWord:   `move shift take bring run drive`,
	movedWord:  `rotated moved shifted brought drove pushed transferred swapped`,
	movingWord: `moving shifting putting going taking bringing running`,
	grazeWord:  `graze eat`,
	grazedWord: `grazed ate eaten chewed munched`, grazingWord: `grazing eating munching`,
	doneWord:  `done finished finito completed complete cleared`,
	leftWord:  `left lef lft`,
	residWord: `stubble residual resid residuals resi res post postgrazing height leaving`,
	untilWord: `until till til untill`, sinceWord: `since`, againWord: `again`, agoWord: `ago`,
	cutWord: `cut`, silageWord: `silage baleage balage haylage silaged sileage ensiled wrapped`, hayWord: `hay hays haymaking hayed`, baleWord: `bale baled bales`,
	toppedWord: `topped topd mulched clipped`, topWord: `top`, mowWord: `mowed mown`,
	canopyWord: `canopy`, closedWord: `closed`, closeWord: `close closing`, shutWord: `shut shutting`, lockWord: `lock locked locking`,
	openWord: `open opened`, releaseWord: `release released unlock unlocked lift lifted`, okWord: `ok`, holdWord: `spelled hold held skip skipping avoid withhold withholding whp`,
	sprayWord: `spray boomsprayed spotsprayed blanketsprayed weedsprayed sprayed spraying herbicide weedkiller glyphosate weedspray insecticide sprays`,
	fertWord: `fert fertiliser fertilizer fertilised fertilized urea dap lime limed super superphosphate potash nitrogen
		fertd topdressed topdress muriate nitrate ammonium ammonia sulphate phosphate granular guano digestate compost`,
	effWord: `litter eff effluent slurry muck manure fde`,
	sowWord: `planted overseeded frostseeded resown reseeded regrassed resowed sown drilled oversown undersown reseed resow seeded regrass sowed`,
	wetWord: `trampled trodden pugged poached waterlogged flooded boggy saturated pugging underwater swampy`, dampWord: `wet soaked soggy`, dryWord: `dried drained`,
	cropWord: `sorghum millet triticale wheat soybeans lucerne crop cropped cropping turnips turnip swedes kale maize beet rape chicory barley oats corn fodder brassica`,
	rainWord: `rain rained rainfall downpour shower showers`, gaugeWord: `gauge guage gage`, tempWord: `temp temperature temps temperatures`,
	soilWord: `soil soils ground`, airWord: `air`, minWord: `min minimum low lo`, maxWord: `max maximum high`, frostWord: `frost`,
	noteWord: `note notes nb memo`,
	cmUnit:   `cm cms centimetres centimeters centimetre`, mmUnit: `mm mms mil mils mls millimetres millimeters millimetre`,
	inchUnit: `inch inches`, pointUnit: `points pts`, clickUnit: `click clicks clix`, kgUnit: `kg kgs kgdm kilos kgdmha dm`,
	haUnit: `ha hectare hectares`, acreUnit: `acre acres ac`, dayUnit: `day days d`, weekUnit: `week weeks wk wks`, monthUnit: `month months mth mths`,
	hourUnit: `hour hours hr hrs mins minutes`, headUnit: `head hd`, leafUnit: `leaf leaves lf lvs lv leafs leave`, tillerUnit: `tiller tillers`,
	degreeUnit: `degree degrees deg degs celsius c`,
	strangeUnit: `drums drum cans sacks boxes packets cartons tubs litres litre l bags bag dollars bucks km kms kph m metres meters metre rolls posts loads load ton tons tonnes
		tonne percent oclock`,
	averageWord: `average avg ave av averages averaged averaging mean avge`, allWord: `all every`, onlyWord: `only`, eachWord: `each apiece`,
	reproWord: `repro reproductive heading headed nodes node seedhead seedheads noded`, daughterWord: `daughter daughters`, remnantWord: `remnant remnants`,
	timesWord: `x`, yellowWord: `yella yellar yelow browned yellowing yellow yellowed dying dead browning dies yellows senescing senesced brown`,
	leafWord:  `oldest old tip tips base bases bottom lowest bottoms older`,
	pointWord: `point`,
	notWord:   `not`,
	negWord: `no never didnt havent hasnt isnt arent wasnt werent dont doesnt wont cant cannot aint couldnt shouldnt wouldnt
		hadnt without nobody none neither nor hardly barely nothing nothin nowhere untouched ungrazed`,
	planWord: `theoretically ideally potentially possibly hopefully will gonna goin shall should could might may must need needs needed want wants wanted wanna lets planning plans
		intend intending hoping thinking thinkin maybe perhaps suppose supposed ought gotta later soon ill theyll youll
		itll would forecast expecting expected try trying lined booked shouldve couldve wouldve mightve`,
	condWord:    `if unless once whenever provided assuming`,
	cuttingWord: `cutting topping mowing mow baling mulching`,
	nearWord:    `least nearly almost over under above below hitting approaching touching exceeding past`,
	wishWord:    `wish wished wishing wishful dream dreamt dreaming`,
	hearWord: `allegedly presumably reportedly seemingly evidently said says say reckons reckon reckoned heard hear told tells apparently thinks think thought believes believe
		seems seem supposedly rumour rumor guess guessing assume assumes claims claimed sez suspect mentioned probably
		prob prolly neighbour neighbours neighbor neighbors neighbouring`,
	hedgeWord: `about around roughly approx approximately ish circa bout abt aprox`,
	jokeWord:  `lol haha hahaha hehe lmao rofl jk joking kidding joke`,
	whWord:    `when which what whats wot wots wat wats where wheres whens who whos whose how hows why whys whatll whatd wherell whered howre whit whits whaur whaurs hoo hoos`,
	auxWord:   `anyone anybody`,
	nextWord:  `next nxt`, readyWord: `ready`,
	todayWord: `today 2day tday`, yesterdayWord: `yesterday yest yday yesty ystd yesterdays`, tomorrowWord: `tomorrow tmrw tmr tomoz tomo tmw tomorow tomorrows morrow tmoz`,
	tonightWord: `tonight tonite`, nightWord: `night nite nights`,
	daytimeWord: `morning mornin morn arvo afternoon evening am pm eve midday`, clockWord: `noon overnight midnight lunchtime dawn dusk daylight`,
	lastWord: `last`, thisWord: `this`,
	grassWord: `ryegrass rye annual italian fescue cocksfoot prairie brome`,
	troubleWord: `trough troughs fence fences gate gates leak leaking leaks broken burst blocked pump thistles thistle ragwort docks
		gorse grubs pugholes water waters power powers reel reels batten battens tree trees branch branches wire wires insulator insulators slugs slug armyworm armyworms caterpillars weevil weevils porina leatherjackets wireworm crickets moles strainer
		strainers strand strands energiser energizer culvert bridge washout pothole potholes`,
}

// valuedWords are words that carry a number.
var valuedWords = map[tag][]string{
	// Sunday is 0, as in the time package.
	weekdayWord: {`sunday sun sundays`, `monday mon mondays`, `tuesday tue tues tuesdays`, `wednesday wed weds wednesdays`,
		`thursday thu thur thurs thursdays`, `friday fri fridays`, `saturday sat sats saturdays`},
	monthName: {``, `january jan`, `february feb`, `march mar`, `april apr`, ``, `june jun`, `july jul`, `august aug`,
		`september sep sept`, `october oct`, `november nov`, `december dec`},
	numberWord: {`zero nil nought`, `one`, `two`, `three`, `four`, `five`, `six`, `seven`, `eight`, `nine`, `ten`, `eleven`, `twelve`,
		`thirteen`, `fourteen`, `fifteen`, `sixteen`, `seventeen`, `eighteen`, `nineteen`, `twenty`,
		30: `thirty`, 40: `forty fourty`, 50: `fifty`, 60: `sixty`, 70: `seventy`, 80: `eighty`, 90: `ninety`},
	partWord: {1: `quarter quarters qtr`, 2: `half halves`, 3: ``},
	ordinalWord: {1: `first`, 2: `second`, 3: `third`, 4: `fourth`, 5: `fifth`, 6: `sixth`, 7: `seventh`, 8: `eighth`, 9: `ninth`, 10: `tenth`,
		11: `eleventh`, 12: `twelfth`},
}

// lexicon gives the meaning of every known word.
var lexicon = buildLexicon()

func buildLexicon() map[string]meaning {
	lex := make(map[string]meaning, 1500)
	for t, words := range lexiconTable {
		for _, w := range strings.Fields(words) {
			if had, twice := lex[w]; twice && had.tag != t {
				panic("parser: the lexicon has " + w + " twice")
			}
			lex[w] = meaning{tag: t}
		}
	}
	for t, lists := range valuedWords {
		for v, words := range lists {
			for _, w := range strings.Fields(words) {
				lex[w] = meaning{t, int16(v)}
			}
		}
	}
	return lex
}
