package artstep

import (
	"testing"

	"fyne.io/fyne/v2/driver/desktop"

	"gussetwright/app/settings"
)

// The row of a piece says when changes to its file are not followed, as soon as the piece
// is shown, and is as high as that takes.
func TestRowsSayWhichFilesAreNotFollowed(t *testing.T) {
	b := newBench(t, settings.Light, 1, several()...)
	const says = "Changes to the file are not followed: not found on disk."
	said := func() (names []string) {
		for i, row := range b.list.rows {
			if row.alone.Text() == says {
				names = append(names, b.pieces()[b.list.index(i)].File)
			} else if row.alone.Text() != "" {
				t.Errorf("a row says %q", row.alone.Text())
			}
		}
		return names
	}
	if names := said(); len(names) != 0 {
		t.Errorf("%q are said not to be followed, and all are", names)
	}
	before := b.list.MinSize().Height
	b.source.alone = map[string]bool{"soft.jpg": true, "late.svg": true, "broken.png": true}
	b.Follow(b.doc.State())
	if names := said(); len(names) != 1 || names[0] != "soft.jpg" {
		t.Errorf("%q are said not to be followed; of those that are shown only soft.jpg is not", names)
	}
	if after := b.list.MinSize().Height; after <= before {
		t.Errorf("the list is %g high, as before %g", after, before)
	}
	// What is found later is seen with the next look at the list.
	b.source.alone = map[string]bool{"front.jpg": true}
	b.list.MouseIn(&desktop.MouseEvent{})
	if names := said(); len(names) != 1 || names[0] != "front.jpg" {
		t.Errorf("under the pointer %q are said not to be followed", names)
	}
	b.source.alone = nil
	b.window.Canvas().Focus(b.list)
	if names := said(); len(names) != 0 {
		t.Errorf("with the focus %q are said not to be followed", names)
	}
}
