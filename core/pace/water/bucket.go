package water

// TotalAvailable gives TAW in mm: 1000 (θFC − θWP) Zr, with water contents in
// m³ m⁻³ and root depth in m (eq. 82).
func TotalAvailable(fieldCapacity, wiltingPoint, rootDepth float64) float64 {
	return 1000 * (fieldCapacity - wiltingPoint) * rootDepth
}

// Depletable gives the part p of TAW that may be used without stress at an
// evapotranspiration of etc mm a day, from its value at 5 mm (FAO-56, Table 22:
// p + 0.04 (5 − ETc), kept between 0.1 and 0.8).
func Depletable(table, etc float64) float64 {
	return min(max(table+0.04*(5-etc), 0.1), 0.8)
}

// Stress gives the coefficient Ks, 1 without stress and 0 at the wilting
// point, from the depletion of the root zone in mm (eq. 84; RAW is p·TAW,
// eq. 83).
func Stress(depletion, taw, p float64) float64 {
	if depletion <= p*taw {
		return 1
	}
	return max((taw-depletion)/((1-p)*taw), 0)
}

// Bucket is the soil's root zone as one store of water.
type Bucket struct {
	TAW       float64 // mm
	P         float64 // at 5 mm a day
	Depletion float64 // Dr, mm below field capacity
	etc       float64 // of the last day, for p
}

// Day takes a day's rain and evapotranspiration in mm (eq. 85, without
// irrigation, runoff and capillary rise; what the soil can't hold drains away).
// Stress slows the evapotranspiration itself (eq. 81).
func (b *Bucket) Day(rain, etc float64) {
	b.etc = etc
	used := Stress(b.Depletion, b.TAW, Depletable(b.P, etc)) * etc
	b.Depletion = min(max(b.Depletion-rain+used, 0), b.TAW)
}

// Stress gives Ks as the store stands.
func (b *Bucket) Stress() float64 {
	return Stress(b.Depletion, b.TAW, Depletable(b.P, b.etc))
}
