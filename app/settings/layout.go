package settings

import "fyne.io/fyne/v2"

// Split is a bar between two parts of the window that can be dragged.
type Split string

// The splits of the window.
const (
	StepsSplit    Split = "steps"    // between the steps and the rest
	PanesSplit    Split = "panes"    // between the blank and the folded bag
	FindingsSplit Split = "findings" // between the panes and the findings
)

// Split returns where a split stands, as the share of what is before it, 0 to 1; usual
// where that is not known.
func (s *Settings) Split(split Split, usual float64) float64 {
	return s.within(splitKey+string(split), 0, 1, usual)
}

// SetSplit remembers where a split stands.
func (s *Settings) SetSplit(split Split, share float64) {
	s.store.SetFloat(splitKey+string(split), share)
}

// The usual size of the window, and the bounds of the sizes that are remembered.
const (
	usualWidth, usualHeight = 1440, 900
	leastSide, mostSide     = 200, 16_384
)

// WindowSize returns the size of the window when it was last closed.
func (s *Settings) WindowSize() fyne.Size {
	width := s.within(widthKey, leastSide, mostSide, usualWidth)
	height := s.within(heightKey, leastSide, mostSide, usualHeight)
	return fyne.NewSize(float32(width), float32(height))
}

// SetWindowSize remembers the size of the window.
func (s *Settings) SetWindowSize(size fyne.Size) {
	s.store.SetFloat(widthKey, float64(size.Width))
	s.store.SetFloat(heightKey, float64(size.Height))
}

// within returns a number that is kept, or usual where there is none or it lies out of
// bounds.
func (s *Settings) within(key string, least, most, usual float64) float64 {
	if value := s.store.FloatWithFallback(key, usual); least <= value && value <= most {
		return value
	}
	return usual
}

// HiddenLayers returns the names of the layers of the blank that are not shown. There
// may be names among them that no layer has.
func (s *Settings) HiddenLayers() []string { return s.store.StringList(hiddenKey) }

// SetHiddenLayers remembers the layers of the blank that are not shown.
func (s *Settings) SetHiddenLayers(names []string) { s.setList(hiddenKey, names) }

// LegendShown tells whether the legend of the blank is shown.
func (s *Settings) LegendShown() bool { return s.store.BoolWithFallback(legendKey, true) }

// SetLegendShown remembers whether the legend of the blank is shown.
func (s *Settings) SetLegendShown(shown bool) { s.store.SetBool(legendKey, shown) }
