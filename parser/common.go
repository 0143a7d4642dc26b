package parser

// commonWords are English words that lie a letter away from words of the
// lexicon or from usual paddock names: they are never taken for a typing error.
var commonWords = wordSet(`horse horses mouse load loads toad rode broad bread read ride till will bill mill kill fill pill hall hell hull
	hills roads rivers driver diver rover liver houses hosed hose moose
	flap flag flan flit slat fleet float plat lack pack rack sack tack hack bank black bake bark
	crazed brazed raised razed gazed glazed grated graded moved loved mover movie lived milked milker miller
	heifer spay spray stray spry hurt cat cute but rough bought brought bit bat bet`)
