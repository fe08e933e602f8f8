// Package ink shows process inks on a screen: what cyan, magenta, yellow and black
// look like when they are printed on white coated paper.
package ink

import (
	"image/color"
	"math"
)

// The inks, as bits of a primary's number.
const (
	cyan = 1 << iota
	magenta
	yellow
	black
)

// primaries are the paper and the fifteen overprints of full inks, in sRGB, by their
// bits. Values from memory: offset printing on coated paper, as colour guides for
// screens commonly give it; those with black are darkened so that more ink is never
// lighter.
var primaries = [16][3]float64{
	0:                       {255, 255, 255},
	cyan:                    {0, 158, 224},
	magenta:                 {230, 0, 126},
	yellow:                  {255, 237, 0},
	cyan | magenta:          {49, 39, 131},
	cyan | yellow:           {0, 150, 64},
	magenta | yellow:        {227, 6, 19},
	cyan | magenta | yellow: {55, 48, 45},

	black:                           {29, 29, 27},
	black | cyan:                    {13, 23, 28},
	black | magenta:                 {27, 15, 20},
	black | yellow:                  {29, 27, 17},
	black | cyan | magenta:          {14, 12, 19},
	black | cyan | yellow:           {11, 20, 14},
	black | magenta | yellow:        {24, 12, 9},
	black | cyan | magenta | yellow: {10, 9, 8},
}

// RGB returns the colour on the screen of inks from 0 (none) to 1 (full); others
// count as the nearer of the two. It follows the Neugebauer equations (1937) with
// Demichel's weights: dots printed at random leave each overprint a share of the
// paper. The shares mix sRGB values as they are coded, not light; that darkens the
// middle tones about as much as the gain of dots in the press does. No colour
// profile is taken into account.
func RGB(c, m, y, k float64) color.RGBA {
	var sum [3]float64
	for number, primary := range primaries {
		share := covered(c, number&cyan != 0) * covered(m, number&magenta != 0) *
			covered(y, number&yellow != 0) * covered(k, number&black != 0)
		for i := range sum {
			sum[i] += float64(share * primary[i])
		}
	}
	return color.RGBA{round(sum[0]), round(sum[1]), round(sum[2]), 255}
}

// covered returns the share of the paper that an ink covers, or leaves free.
func covered(amount float64, with bool) float64 {
	amount = max(0, min(amount, 1))
	if with {
		return amount
	}
	return 1 - amount
}

func round(v float64) uint8 { return uint8(math.Round(v)) }
