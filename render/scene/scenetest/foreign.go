// Package scenetest holds what tests of drawings share.
package scenetest

import (
	"regexp"
	"strings"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Foreign returns a voice that says everything as InGreek does, with decimals behind a
// comma. What a drawing does not ask it for is left in Latin letters.
func Foreign() scene.Voice { return foreign{InGreek} }

type foreign struct{ scene.Spoken }

// Number is part of scene.Voice.
func (foreign) Number(value float64, decimals int) string {
	return strings.Replace(geometry.FormatNumber(value, decimals), ".", ",", 1)
}

// latinOrVerb are the letters of a text, but not those that put a value into it.
var latinOrVerb = regexp.MustCompile(`%[sd]|[A-Za-z]`)

// InGreek puts Greek letters in the place of all Latin ones, in words half as long again.
func InGreek(english string) string {
	second := false
	return latinOrVerb.ReplaceAllStringFunc(english, func(found string) string {
		if found[0] == '%' {
			return found
		}
		if second = !second; second {
			return "ο"
		}
		return "λι"
	})
}
