package entry

// LeafStage is a number of new leaves since the last grazing, on one tiller or
// as a mean over tillers.
type LeafStage float64

// Hectares is an area.
type Hectares float64

// SquareMetresPerHectare and HectaresPerAcre convert areas. The international
// acre is 0.40468564224 ha exactly (international yard and pound agreement of
// 1959).
const (
	SquareMetresPerHectare = 10000.0
	HectaresPerAcre        = 0.40468564224
)

// Acres gives an area typed in acres.
func Acres(a float64) Hectares { return Hectares(a * HectaresPerAcre) }

// ResidualUnit is the unit in which somebody measured what stock left.
type ResidualUnit string

// The units of a residual. A click is half a centimetre of compressed height
// on a rising plate (common practice, no source); it is kept as told.
const (
	Centimetres ResidualUnit = "cm"
	Inches      ResidualUnit = "in"
	Clicks      ResidualUnit = "clicks"
	KgDMPerHa   ResidualUnit = "kgDM/ha"
)

// Residual is what stock left behind, in the unit in which it was told.
type Residual struct {
	Value float64      `json:"value"`
	Unit  ResidualUnit `json:"unit"`
}

// Thermometer tells where a temperature was taken.
type Thermometer string

// Where a temperature was taken.
const (
	Soil Thermometer = "soil"
	Air  Thermometer = "air"
)

// Grass is the kind of grass that a paddock carries.
type Grass string

// The grasses that the program knows; the empty Grass is not told and is
// reckoned as perennial ryegrass.
const (
	Ryegrass     Grass = "ryegrass"
	AnnualRye    Grass = "annual"
	ItalianRye   Grass = "italian"
	Fescue       Grass = "fescue"
	Cocksfoot    Grass = "cocksfoot"
	PrairieGrass Grass = "prairie"
	Brome        Grass = "brome"
)

// Grasses lists every known grass.
func Grasses() []Grass {
	return []Grass{Ryegrass, AnnualRye, ItalianRye, Fescue, Cocksfoot, PrairieGrass, Brome}
}
