package entry

import (
	"strings"

	"gussetwright/geometry"
)

// PriceDecimals are the digits after the point of a price at most: one sheet often costs
// less than a hundredth can tell apart.
const PriceDecimals = 6

// FormatPrice writes a price as it stands in an entry: with two decimals at least, as
// money is written, and as many more as it has.
func FormatPrice(price float64) string {
	text := geometry.FormatNumber(price, PriceDecimals)
	whole, decimals, _ := strings.Cut(text, ".")
	for len(decimals) < 2 {
		decimals += "0"
	}
	return whole + "." + decimals
}
