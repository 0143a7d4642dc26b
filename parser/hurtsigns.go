package parser

// What befalls people, as it is told: each sign is one of a person unless an animal or
// a thing stands before it (the grammar of a sign is that of illness). It is better to
// send a well person the emergency number than to overlook one who is hurt.

const (
	needNobody  signNeed = iota // told of anybody but an animal or a thing
	needSomeone                 // a person must be told of right before it
)

// hurtTable holds the signs by whom they need. "$" stands for whose.
var hurtTable = map[signNeed]string{
	needNobody: `
		isnt|not|stopped|aint|wasnt|hardly|barely|no breathing; cant|cannot|couldnt ?even breathe; no pulse; having trouble breathing;
		need|needs|needing|wants|get|call|ring|send|phone ?for an|the ambulance; ambulance|paramedics|helicopter is|are|on|coming|called|there|here;
		knocked ?him|her|himself|herself out; passed|blacked out; out cold; concussed; concussion; head injury;
		not|isnt conscious; unconscious; wont|cant|not|isnt|couldnt ?be wake|waking|woken|rouse|responding ?up; ?has|had|having|took|taken|taking a|another heart attack|stroke|seizure; heart attack; chest pain|pains; pains in $ chest;
		broken|broke|fractured|dislocated|smashed|busted|snapped|bust|shattered ?his|her|my|a|an|some ?couple ?of ?bloody ?left|right leg|arm|wrist|ankle|hand|foot|finger|fingers|rib|ribs|collarbone|shoulder|hip|back|neck|nose|thumb|knee|pelvis|jaw|toe|toes;
		cut|sliced|slashed|gashed|crushed|jammed|caught|trapped|burnt|burned|scalded|smashed|mangled|put ?through ?off ?half his|her|my|a|half ?left|right hand|arm|leg|finger|fingers|thumb|foot|head|face|eye|wrist|hair|sleeve|coat|hands|fingertip;
		his|her|my hand|hands|arm|leg|finger|fingers|foot|sleeve|hair|coat|jacket ?is|was|has|got|gets|been ?got caught|trapped|stuck|jammed|crushed|pinned|mangled;
		hit|banged|cracked|split|smacked|bumped|whacked his|her|my ?own head ?open; hit|kick|knock|bang|belt|blow|whack|kicked|bump to|on|in ?the|his|her|my head|face|chest|ribs|back; smack in the head|face;
		cant|couldnt|cannot ?even feel|move his|her|my|the ?left|right leg|legs|arm|arms|hand|hands|feet|fingers;
		fell|fallen|falls|thrown|knocked|came|come|bucked off|from|out|through ?of the|a|his|her|my|that ?top ?of ?the roof|ladder|silo|stack|tractor|trailer|bike|motorbike|quad|horse|ute|truck|jeep|gator|mule|buggy|bales|loft|hayloft|bridge|skylight|rafters|windmill|tower;
		fell|fallen|falls|slipped ?head ?first into|in|down the|a|an|that ?old ?slurry|effluent|manure pit|pond|tank|lagoon|store|well|shaft|slurry|silo;
		needle|syringe|drench|vaccine|injection in|into|through his|her|my|the|a ?left|right hand|finger|leg|thumb|arm|foot|knee; jabbed|injected|stabbed|stuck|cut|burnt|burned|hurt|shot|electrocuted|scalded|poisoned himself|herself|myself|themselves; stuck a needle in;
		sprayed|splashed|squirted|hit in the|his|her|my|both ?left|right eye|eyes|face; acid|caustic|spray|drench|chemical|disinfectant|teatspray ?all in|on|over|down his|her|my ?left|right eye|eyes|face|mouth|throat|skin|back|legs;
		drank|drunk|swallowed|inhaled ?some ?of ?the spray|drench|chemical|chemicals|acid|poison|caustic|diesel|fumes|gas; slurry gas; silo gas; overcome by ?the fumes|gas;
		knocked|run|ran|rolled|backed|flattened|driven over|down by|him|her|me; knocked over|down|flat ?by ?the|a bull|cow|heifer|steer|ram|beast|horse|stag|cattle|cows;
		kicked|gored|trampled|charged|butted|flattened|squashed|crushed|tossed|hit|attacked|rammed|mauled|knocked him|her|me|dad|mum; kicked|gored|trampled|butted|flattened|squashed|crushed|tossed|hit|attacked|rammed|mauled|bitten|bit by|off ?a|the|that ?big|old|bloody ?red|black cow|bull|heifer|steer|ram|beast|horse|stag|calf|sow|boar|bullock|dog|tup;
		crushed|squashed|pinned|jammed|trapped against|between|up ?up ?against ?the gate|gates|race|wall|rails|tractor|crush|bail|yard|post;
		pinned|trapped|stuck|caught under|beneath|underneath|in ?the|a|his|her|that ?overturned bike|quad|tractor|trailer|ute|truck|jeep|roller|mower|bale|bales|gator|loader|digger|pto|baler|mixer|auger|chopper; bale|bales|gate|wall|tree fell|rolled|came|on ?down on|top ?of him|her|me|dad|mum;
		his|her legs|leg ?is|are|was|were ?gone numb|broken|crushed; hasnt come back|home ?yet ?and ?its ?dark;
		man|woman|person|kid|child|someone|somebody|lad|worker down; anaphylactic; allergic reaction; epipen; suffocating; suffocated; choking`,
	needSomeone: `
		had|has|having|taken|took|taking|got a|another ?bad|nasty|wee|bit|little|fair|serious ?of ?a fall|tumble|stroke|turn|accident|belt|seizure|fit|shock|crash|spill|smash|knock;
		is|in|are|was ?in ?a ?very|real|right bad way|shape; in ?terrible|awful|bad pain|agony; badly hurt|injured; collapsed; fainted; fainting; hurt; injured; bleeding; bled; burnt; burned; scalded; stung; trapped; pinned; crushed; buried; trampled; gored; kicked; electrocuted; zapped; squashed;
		run|knocked over; knocked down; fell|fallen ?down ?badly ?off ?the ?a ?shed ?and cant|wont|hurt|broke; cant|couldnt|wont ?even get|stand|move|walk ?back up; needs|need|needing help ?now|quick|bad|badly|fast|urgently; needs|need|gone|going to|in hospital|stitches; not|isnt moving; ?bad asthma attack; bitten; under the|a|his|her ?overturned quad|bike|tractor|trailer|ute|truck|jeep; lifeless; dying; face down; drowning; drowned; gone|went ?head ?first into|in|down the|a|an|that ?old ?slurry|effluent|manure pit|pond|tank|lagoon|store|well|shaft|slurry|silo|hole`,
}

// hurtSigns are the signs by the words that they can begin with.
var hurtSigns = signIndex(hurtTable)

// befallen tells whether one sentence tells of something that befell a person.
//
//	befallen = [ person { word } ] sign
func (r *reader) befallen(from, to int) bool {
	for i := from; i < to; i++ {
		t := r.tok(i)
		if t.shape != word {
			continue
		}
		list := hurtSigns[t.text]
		for n := range list {
			k, ok := r.signAt(&list[n], i, to)
			if ok && !r.spared(from, i, k) && !r.beforeHarm(from, i) && (list[n].need == needNobody && !r.namesPadIn(i+1, k) || r.someone(from, i)) && !r.longAgo(from, to) {
				return true
			}
		}
	}
	return false
}

// harmSaid tells whether any sign stands in a run of tokens, whoever it is told of.
func (r *reader) harmSaid(from, to int) bool {
	for i := from; i < to; i++ {
		if t := r.tok(i); t.shape == word {
			list := hurtSigns[t.text]
			for n := range list {
				if _, ok := r.signAt(&list[n], i, to); ok {
					return true
				}
			}
		}
	}
	return false
}

// spared tells whether what might befall a person is denied, feared or avoided.
func (r *reader) spared(from, i, k int) bool {
	for n := max(from, i-5); n < i; n++ {
		if r.tok(n).shape == mark {
			continue
		}
		if r.refuted(n, n+1) || unharmed[r.tok(n).text] && !r.oneOf(n, "treated", "treat", "oil", "drench", "drenched", "watch", "watching", "none") ||
			r.oneOf(n, "nearly", "almost", "could", "might", "careful", "mind", "nobody", "noone", "lucky", "cant", "dont", "lest", "before", "hell", "youll", "would", "should", "going", "gonna", "training", "course") {
			return true
		}
	}
	switch last := r.tok(k - 1).text; {
	case r.oneOf(k, "test", "training", "course", "feeling", "free", "vaccine"):
		return true
	case r.tok(k).tag == offWord:
		return last == "kicked" || limbs[last] && !r.oneOf(i+1, "his", "her", "my") // "broke a leg off the plate meter"
	case r.tok(k).tag == onWord:
		return last == "kicked"
	case last == "dying" || last == "hurt":
		return r.oneOf(k, "for", "to", "my")
	case last == "burnt" || last == "burned":
		return r.oneOf(k, "out", "off", "the", "a", "all")
	case last == "over" || last == "down":
		return r.oneOf(k, "the", "a", "that", "my", "his", "there", "here") && !r.oneOf(k+1, "bull", "cow", "side", "bank")
	case r.tok(k).tag == ofWord:
		return !r.oneOf(k+1, "them", "the", "us", "him")
	}
	return r.oneOf(k, "when", "about", "at") && r.oneOf(k-1, "fit", "seizure", "stroke", "turn")
}

// beforeHarm tells whether an animal or a thing is what harm is told of: "heifer broke
// her leg", "the gate got run over".
func (r *reader) beforeHarm(from, i int) bool {
	for n := i - 1; n >= from; n-- {
		switch {
		case r.personAt(n):
			return false
		case r.beast(n), harmedThings[r.tok(n).text]:
			return true
		}
	}
	return false
}

// someone tells whether a person is told of right before a sign, whoever it is.
func (r *reader) someone(from, i int) bool {
	for n := i - 1; n >= max(from, i-6); n-- {
		t := r.tok(n)
		switch {
		case r.personAt(n):
			return true
		case t.shape != word:
			return false
		case linkWords[t.text] || r.oneOf(n, "just", "he", "bad", "badly", "i", "think", "think", "after", "cut", "come", "came", "only"):
			continue
		}
		// A word of no other meaning may be a name.
		return t.tag == unknown && !thingWords[t.text] && !harmedThings[t.text] && !plants[t.text] && !vehicleWords[t.text] && !smallTalk[t.text]
	}
	return false
}

// personAt tells whether a token is a person, whatever they are called here.
func (r *reader) personAt(i int) bool {
	t := r.tok(i)
	return t.shape == word && (personWords[t.text] || people[t.text]) && !(r.oneOf(i, "her", "him", "me") && i > 0 && r.tok(i-1).shape == word)
}

var (
	people = wordSet(`wife husband son daughter lads guys fella bloke gaffer missus uncle aunt brother sister nana nan granda grandad grandpa granny kids child children baby manager vet apprentice
		student woman women men people visitor walker neighbours workers cowman herdsman shepherd musterer shearer fencer sharemilker team guy chap lassie teenager young fellow farmhand hand`)
	harmedThings = wordSet(`gate fence post wall pipe hose trough tank pump battery phone tyre tyres wire wires line cable board unit motor engine roof shed tree branch hedge bale bales hay silage straw grass
		clover crop sward rape kale barley maize ground soil stubble weeds thistle thistles docks food dinner toast belt chain blade knife
		dog dogs cat cats pup pups rabbit possum sheepdog hen hens duck swan deer fox`)
)
