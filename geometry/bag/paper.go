package bag

// bulk is the volume per mass of each kind of paper in cm³/g. Mid-range values
// from memory, to be replaced by the mill's data sheet; a measured caliper wins.
var bulk = map[PaperKind]float64{
	PaperGloss:    0.76,
	PaperMatt:     0.90,
	PaperUncoated: 1.25,
	PaperKraft:    1.35,
	PaperBoard:    1.30,
}

// Bulk returns the bulk of the paper in cm³/g.
func (p Paper) Bulk() float64 { return bulk[p.Kind] }

// CaliperMicrons returns the thickness in µm: as measured, or else grammage ×
// bulk, the definition of bulk in ISO 534.
func (p Paper) CaliperMicrons() float64 {
	if p.Caliper > 0 {
		return p.Caliper
	}
	return p.Grammage * p.Bulk()
}

// Thickness returns the caliper in millimetres.
func (p Paper) Thickness() float64 { return p.CaliperMicrons() / 1000 }
