package steps

import "gussetwright/geometry"

// length writes a length with its unit, as the user likes it.
func (b *bench) length(mm float64) string {
	unit := b.set.Unit()
	return b.bare(mm) + " " + string(unit)
}

// bare writes a length without its unit.
func (b *bench) bare(mm float64) string {
	unit, decimals := b.set.Unit(), 2
	if unit == geometry.Millimetre {
		decimals = 1
	}
	return geometry.FormatNumber(mm/unit.Length(), decimals)
}

// area writes a width and a height.
func (b *bench) area(width, height float64) string {
	return b.bare(width) + " × " + b.bare(height) + " " + string(b.set.Unit())
}
