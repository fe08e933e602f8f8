// Package settings is what the program remembers about its user from day to day:
// units, looks, the window, recent files.
package settings

import (
	"slices"

	"fyne.io/fyne/v2"

	"gussetwright/geometry"
)

// The keys under which settings are kept.
const (
	unitKey       = "unit"
	appearanceKey = "appearance"
	scaleKey      = "text-scale"
	languageKey   = "language"
	recentKey     = "recent"
	widthKey      = "window-width"
	heightKey     = "window-height"
	hiddenKey     = "layers-hidden"
	legendKey     = "legend"
	rankingKey    = "sheet-ranking"
	originsKey    = "artwork-origins"
	splitKey      = "split-" // followed by the name of the split
)

// mostRecent is the number of recent files that are remembered.
const mostRecent = 10

// Appearance is how light the window is.
type Appearance string

// The appearances. BySystem follows the desktop.
const (
	BySystem Appearance = "system"
	Light    Appearance = "light"
	Dark     Appearance = "dark"
)

// Settings reads and writes the preferences of the program. It belongs to the
// goroutine of the window.
type Settings struct {
	store     fyne.Preferences
	usual     geometry.Unit // "" for millimetres
	listeners []func()
}

// New returns the settings kept in store.
func New(store fyne.Preferences) *Settings { return &Settings{store: store} }

// Listen calls tell after every change of unit, appearance, text scale or language.
func (s *Settings) Listen(tell func()) { s.listeners = append(s.listeners, tell) }

func (s *Settings) tell() {
	for _, tell := range s.listeners {
		tell()
	}
}

// Unit returns the unit in which lengths are shown and bare numbers are read.
func (s *Settings) Unit() geometry.Unit {
	for _, unit := range []geometry.Unit{geometry.Unit(s.store.String(unitKey)), s.usual} {
		if slices.Contains(geometry.Units(), unit) {
			return unit
		}
	}
	return geometry.Millimetre
}

// SetUnit changes the unit.
func (s *Settings) SetUnit(unit geometry.Unit) {
	s.store.SetString(unitKey, string(unit))
	s.tell()
}

// Appearance returns how light the window is.
func (s *Settings) Appearance() Appearance {
	switch a := Appearance(s.store.String(appearanceKey)); a {
	case Light, Dark:
		return a
	}
	return BySystem
}

// SetAppearance changes how light the window is.
func (s *Settings) SetAppearance(a Appearance) {
	s.store.SetString(appearanceKey, string(a))
	s.tell()
}

// TextScale returns the size of text as a share of the usual, 0.8 to 2.
func (s *Settings) TextScale() float64 { return s.within(scaleKey, leastScale, mostScale, 1) }

const leastScale, mostScale = 0.8, 2

// SetTextScale changes the size of text, as far as it may be.
func (s *Settings) SetTextScale(scale float64) {
	s.store.SetFloat(scaleKey, min(max(scale, leastScale), mostScale))
	s.tell()
}

// Language returns the chosen language, such as "de", or "" for that of the system.
func (s *Settings) Language() string { return s.store.String(languageKey) }

// SetLanguage changes the language from the next start on.
func (s *Settings) SetLanguage(language string) {
	s.store.SetString(languageKey, language)
	s.tell()
}

// Ranking is what sheets are ranked by.
type Ranking string

// The rankings, each with the best sheet first.
const (
	LeastWaste Ranking = "waste"
	LeastPaper Ranking = "paper"
	LeastCost  Ranking = "cost"
)

// Ranking returns what sheets are ranked by.
func (s *Settings) Ranking() Ranking {
	switch r := Ranking(s.store.String(rankingKey)); r {
	case LeastPaper, LeastCost:
		return r
	}
	return LeastWaste
}

// SetRanking changes what sheets are ranked by.
func (s *Settings) SetRanking(r Ranking) { s.store.SetString(rankingKey, string(r)) }

// Recent returns the paths of the files opened or saved last, newest first.
func (s *Settings) Recent() []string { return s.store.StringList(recentKey) }

// AddRecent puts a path at the head of the recent files.
func (s *Settings) AddRecent(path string) {
	list := append([]string{path}, slices.DeleteFunc(s.Recent(), func(p string) bool { return p == path })...)
	s.setList(recentKey, list[:min(len(list), mostRecent)])
}

// ForgetRecent takes a path that is gone out of the recent files.
func (s *Settings) ForgetRecent(path string) {
	s.setList(recentKey, slices.DeleteFunc(s.Recent(), func(p string) bool { return p == path }))
}

// setList stores a list. What stands there and is no list has to go first: the store
// compares the lengths of both.
func (s *Settings) setList(key string, list []string) {
	if s.store.StringListWithFallback(key, nil) == nil {
		s.store.RemoveValue(key)
	}
	s.store.SetStringList(key, list)
}
