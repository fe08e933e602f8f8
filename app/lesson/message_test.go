package lesson

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"gussetwright/app/settings"
)

// What was written is told whole: the words end above the buttons, and all of it lies in
// the frame and on the page, at every size of window and text.
func TestMessageHasRoomForItsWords(t *testing.T) {
	const file = "Quillmoor_Tea_House_gift_bag_practice_a4.pdf"
	paths := []string{
		"/home/ada/Documents/Workshops/Autumn term/" + file,
		"/home/ada/Documents/" + strings.Repeat("Workshops of the autumn term/", 5) + file,
		"/home/ada/Documents/" + strings.Repeat("Workshops_of_the_autumn_term/", 8) + file,
	}
	for _, size := range []fyne.Size{{Width: 1024, Height: 674}, {Width: 1280, Height: 694}, {Width: 1920, Height: 1080}} {
		for _, scale := range []float64{0.8, 1, 1.3, 1.5, 1.8, 2} {
			b := newBench(t, demo(t), size.Width, size.Height, func(s *settings.Settings) { s.SetTextScale(scale) }).blind()
			for _, path := range paths {
				b.Say("The practice blanks are being written…", "")
				b.Say("The practice blanks were written to "+path, path)
				where := fmt.Sprintf("%g × %g, text %g, a path of %d letters", size.Width, size.Height, scale, len(path))
				toldWhole(t, where, b)
			}
		}
	}
}

// toldWhole checks that the message of a view covers none of its own words.
func toldWhole(t *testing.T, where string, b *bench) {
	t.Helper()
	m := b.page.message
	if end := m.text.Position().Y + m.text.HeightFor(m.text.Size().Width); end > m.open.Position().Y {
		t.Errorf("%s: the words end at %g, the buttons begin at %g", where, end, m.open.Position().Y)
	}
	if end := m.folder.Position().X + m.folder.Size().Width; end > m.Size().Width {
		t.Errorf("%s: the buttons end at %g of %g", where, end, m.Size().Width)
	}
	if end := m.open.Position().Y + m.open.Size().Height; end > m.Size().Height {
		t.Errorf("%s: the buttons end at a height of %g of %g", where, end, m.Size().Height)
	}
	top, bottom := m.Position().Y, m.Position().Y+m.Size().Height
	if top < b.bag.Position().Y || bottom > b.Size().Height {
		t.Errorf("%s: the message lies from %g to %g, the bag begins at %g and the page ends at %g", where, top, bottom, b.bag.Position().Y, b.Size().Height)
	}
}
