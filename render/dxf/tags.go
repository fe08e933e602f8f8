package dxf

import (
	"bytes"
	"math"
	"strconv"
	"strings"

	"gussetwright/geometry"
)

// handle is the number by which the objects of a file refer to each other.
type handle uint64

// Decimals of the numbers in the file. Angles have more, because on a large arc
// a millionth of a degree is a visible length.
const (
	lengthDecimals = 6
	angleDecimals  = 9
)

// tags is the text of a DXF file: pairs of a group code and a value, each on a
// line of its own that ends in carriage return and line feed.
type tags struct{ buffer []byte }

func (t *tags) end() { t.buffer = append(t.buffer, '\r', '\n') }

// code writes a group code, right-aligned in three columns as is customary.
func (t *tags) code(code int) {
	for width := 100; width > 1 && code < width; width /= 10 {
		t.buffer = append(t.buffer, ' ')
	}
	t.buffer = strconv.AppendInt(t.buffer, int64(code), 10)
	t.end()
}

// text writes a value as it stands; see encode for text that a user wrote.
func (t *tags) text(code int, value string) {
	t.code(code)
	t.buffer = append(t.buffer, value...)
	t.end()
}

func (t *tags) whole(code, value int) {
	t.code(code)
	t.buffer = strconv.AppendInt(t.buffer, int64(value), 10)
	t.end()
}

func (t *tags) handle(code int, value handle) {
	t.code(code)
	start := len(t.buffer)
	t.buffer = strconv.AppendUint(t.buffer, uint64(value), 16)
	copy(t.buffer[start:], bytes.ToUpper(t.buffer[start:]))
	t.end()
}

// length writes a number in mm.
func (t *tags) length(code int, value float64) { t.real(code, value, lengthDecimals) }

// angle writes an angle in degrees, from 0 to less than 360.
func (t *tags) angle(code int, radians float64) {
	degrees := math.Mod(radians*180/math.Pi, 360)
	if degrees < 0 {
		degrees += 360
	}
	if degrees > 360-math.Pow10(-angleDecimals) {
		degrees = 0
	}
	t.real(code, degrees, angleDecimals)
}

// point writes x, y and z. The group codes of y and z are 10 and 20 above that
// of x.
func (t *tags) point(code int, p geometry.Vec2) {
	t.length(code, p.X)
	t.length(code+10, p.Y)
	t.length(code+20, 0)
}

// corner writes x and y of a point that has no z.
func (t *tags) corner(code int, p geometry.Vec2) {
	t.length(code, p.X)
	t.length(code+10, p.Y)
}

// real writes a number with at least one decimal, so that it is not taken for a
// whole number.
func (t *tags) real(code int, value float64, decimals int) {
	t.code(code)
	start := len(t.buffer)
	t.buffer = strconv.AppendFloat(t.buffer, value, 'f', decimals, 64)
	end := len(t.buffer)
	for t.buffer[end-1] == '0' && t.buffer[end-2] != '.' {
		end--
	}
	t.buffer = t.buffer[:end]
	if string(t.buffer[start:]) == "-0.0" {
		t.buffer = append(t.buffer[:start], "0.0"...)
	}
	t.end()
}

// lines writes tags that never change: on each line a group code, a space and
// the value, which may be empty.
func (t *tags) lines(fixed string) {
	for line := range strings.Lines(strings.TrimLeft(fixed, "\n")) {
		code, value, _ := strings.Cut(strings.TrimRight(line, "\n"), " ")
		number, err := strconv.Atoi(code)
		if err != nil {
			// The text is a constant of this package.
			panic("dxf: a line without group code: " + line)
		}
		t.text(number, value)
	}
}
