package entry

import "strings"

// grassWords are the words under which people know a grass (common practice,
// no source).
var grassWords = map[string]Grass{
	"ryegrass": Ryegrass, "rye": Ryegrass, "perennial ryegrass": Ryegrass, "perennial": Ryegrass, "prg": Ryegrass,
	"annual": AnnualRye, "annual ryegrass": AnnualRye, "annual rye": AnnualRye, "westerwolds": AnnualRye,
	"italian": ItalianRye, "italian ryegrass": ItalianRye, "italian rye": ItalianRye, "hybrid ryegrass": ItalianRye,
	"fescue": Fescue, "tall fescue": Fescue,
	"cocksfoot": Cocksfoot, "orchardgrass": Cocksfoot, "orchard grass": Cocksfoot,
	"prairie": PrairieGrass, "prairie grass": PrairieGrass, "prairiegrass": PrairieGrass,
	"brome": Brome, "pasture brome": Brome, "grazing brome": Brome,
}

// GrassNamed gives the grass that goes by a name, in whatever case.
func GrassNamed(s string) (Grass, bool) {
	g, ok := grassWords[strings.ToLower(strings.Join(strings.Fields(s), " "))]
	return g, ok
}
