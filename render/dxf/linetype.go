package dxf

import (
	"slices"
	"strconv"
	"strings"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// continuous is the name of the line type without gaps.
const continuous = "CONTINUOUS"

// lineType is a pattern of dashes and gaps in mm, starting with a dash.
type lineType struct {
	name    string
	pattern []float64
}

// lineTypes holds each pattern once, in the order in which they are first used.
type lineTypes []lineType

// lineTypesOf returns the patterns of all strokes.
func lineTypesOf(pieces []scene.Drawing) lineTypes {
	var types lineTypes
	for _, piece := range pieces {
		for _, item := range piece.Items {
			stroke, ok := item.(scene.Stroke)
			if pattern := evened(stroke.Dash); ok && pattern != nil && types.name(stroke.Dash) == continuous {
				types = append(types, lineType{"DASHED_" + strconv.Itoa(len(types)+1), pattern})
			}
		}
	}
	return types
}

// name returns the name of the line type with these dashes, continuous when
// there is none.
func (l lineTypes) name(dash []float64) string {
	pattern := evened(dash)
	i := slices.IndexFunc(l, func(t lineType) bool { return slices.Equal(t.pattern, pattern) })
	if i < 0 {
		return continuous
	}
	return l[i].name
}

// evened returns the dashes with a gap after each: an odd number is written
// twice, as it is drawn. It returns nil for a line without gaps.
func evened(dash []float64) []float64 {
	pattern := dash
	if len(dash)%2 == 1 {
		pattern = slices.Concat(dash, dash)
	}
	for i := 1; i < len(pattern); i += 2 {
		if pattern[i] > 0 {
			return pattern
		}
	}
	return nil
}

// description says the lengths of the pattern.
func (l lineType) description() string {
	var lengths []string
	for i, length := range l.pattern {
		name := "dash "
		if i%2 == 1 {
			name = "gap "
		}
		lengths = append(lengths, name+geometry.FormatNumber(length, lengthDecimals))
	}
	return strings.Join(lengths, ", ") + " mm"
}

// write adds the record of the line type. A gap is a negative length.
func (l lineType) write(out *tags, own handle) {
	out.record("LTYPE", own, lineTypeTable, "AcDbLinetypeTableRecord")
	out.text(2, l.name)
	out.whole(70, 0)
	out.text(3, l.description())
	out.whole(72, 'A')
	out.whole(73, len(l.pattern))
	total := 0.0
	for _, length := range l.pattern {
		total += length
	}
	out.length(40, total)
	for i, length := range l.pattern {
		if i%2 == 1 {
			length = -length
		}
		out.length(49, length)
		out.whole(74, 0)
	}
}
