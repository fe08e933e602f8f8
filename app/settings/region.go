package settings

import (
	"strings"

	"golang.org/x/text/language"

	"gussetwright/geometry"
)

// UsualUnit returns the unit of people where a locale such as "en-US" is at home: the inch
// in the United States (the measurement system US of the Unicode CLDR, from memory), else
// the millimetre. environment returns variables of the environment, in which systems after
// POSIX say by what people measure apart from what they speak.
func UsualUnit(locale string, environment func(name string) string) geometry.Unit {
	for _, name := range []string{"LC_ALL", "LC_MEASUREMENT"} {
		if chosen := environment(name); chosen != "" {
			locale = chosen
			break
		}
	}
	locale, _, _ = strings.Cut(locale, ".")
	if _, _, region := language.Make(locale).Raw(); region.String() == "US" {
		return geometry.Inch
	}
	return geometry.Millimetre
}

// SetUsualUnit sets the unit that is used until the user chooses one.
func (s *Settings) SetUsualUnit(unit geometry.Unit) { s.usual = unit }
