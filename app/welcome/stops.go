package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

// Stop is a stop of the tour: a part of the window and what it is for.
type Stop struct {
	Title, Text string
	Target      func() fyne.CanvasObject // the part now, or nil while it is not shown
}

// Parts are the parts of the window that the tour names. A nil one has no stop.
type Parts struct {
	Steps, Entries, Blank, Folded, Findings, Files func() fyne.CanvasObject
}

// Stops returns the stops of the tour in the language of the user.
func Stops(p Parts) []Stop {
	all := []Stop{
		{
			lang.L("The steps of the job"),
			lang.L("From the product to the files, in the order of the work. A mark tells that an entry of the step has a finding."), p.Steps,
		},
		{
			lang.L("The entries"),
			lang.L("Type a number with any unit, use the arrow keys, or drag the slider. Limits and reasons stand beside the entry."), p.Entries,
		},
		{
			lang.L("The blank"),
			lang.L("The flat sheet, seen from the print side. Turn the wheel to zoom, drag to move it, and drag an edge or a hole to change the bag."), p.Blank,
		},
		{
			lang.L("The folded bag"),
			lang.L("The same bag, standing. Drag to turn it. What is under the pointer lights up in the blank as well."), p.Folded,
		},
		{
			lang.L("The findings"),
			lang.L("What cannot be made, what is likely to go wrong, and what to do about it. Click a finding to see its place."), p.Findings,
		},
		{
			lang.L("The files"),
			lang.L("The drawings for printer and die-maker, at true size. They are made from the very bag that you see."), p.Files,
		},
	}
	var stops []Stop
	for _, stop := range all {
		if stop.Target != nil {
			stops = append(stops, stop)
		}
	}
	return stops
}
