package parser

// commonWords are English words that lie a letter away from words of the
// lexicon or from usual paddock names: they are never taken for a typing error.
var commonWords = wordSet(`horse horses mouse load loads toad rode broad bread read ride till will bill mill kill fill pill hall hell hull
	hills roads rivers driver diver rover liver houses hosed hose moose
	flap flag flan flit slat fleet float plat lack pack rack sack tack hack bank black bake bark
	crazed brazed raised razed gazed glazed grated graded graced grazer grazes moved loved mover movie lived milked milker miller walkers
	tapped tipped stopped hopped popped topper mopped copped lopped capped topples strayed splayed prayed sprayer sprays
	heaves weaves loaves leaver cleaves millers fillers killers tilers halves calve caves valves salves
	reading beading leading herding heating healing hearing handing heeding affluent notation closer clothed closet
	finisher finishes floored folded fogged hugged mugged lugged bugged plugged
	sheers steels steer stars stears peers beers moor mooed mouthed shifter sifted lifted gifted drifted
	slates clocks chicks cliques counter counties mounted talked waked walker chalked balked
	sunday mornings mourning warning earnings average beverage coverage overage
	untied unite untie friend friends fried fridge
	silence collage village spillage canoe canopies closing topping hopping tapping stopping
	mother brother bother daughters slaughter laughter tonnage
	forth worth mouth youth sooth creep cheek greek creak button bottle barns born bard bars bran yarn cards wards yarns calved lambed
	smith smithy chapels chaps damn dame dams ham jam ram yam hilly hilt`)
