package filestep

import "fyne.io/fyne/v2"

// Button returns the button that writes the files.
func (s *Step) Button() fyne.CanvasObject { return s.button }
