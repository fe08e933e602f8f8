package artstep

import (
	"fmt"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry/check"
	"gussetwright/geometry/placement"
	"gussetwright/render/artcheck"
)

// condition is how it stands with a piece of artwork, in words and with a sign that is
// not told by its colour alone.
type condition struct {
	text string
	sign sign
}

// sign is the shape beside a condition.
type sign int

const (
	waiting sign = iota
	fine
	warning
	failed
)

func (s sign) resource() fyne.Resource {
	switch s {
	case fine:
		return theme.NewSuccessThemedResource(theme.ConfirmIcon())
	case warning:
		return entry.Sign(check.Warning)
	case failed:
		return entry.Sign(check.Error)
	}
	return theme.NewThemedResource(theme.HistoryIcon())
}

// conditionOf returns how it stands with a piece of the bag.
func conditionOf(snapshot *document.Snapshot, index int) condition {
	if index >= len(snapshot.Hung) || index >= len(snapshot.Spec.Artwork) {
		return condition{lang.L("Not shown yet."), waiting}
	}
	hung := snapshot.Hung[index]
	switch {
	case hung.Err != nil:
		return condition{reason(hung.Err), failed}
	case hung.Art == nil:
		return condition{lang.L("Being opened…"), waiting}
	case !placement.Has(&snapshot.Blank, snapshot.Spec.Artwork[index].On):
		return condition{lang.L("The bag has no such place. Choose another."), warning}
	}
	ppi, found := leastPPI(snapshot, index)
	if !found {
		return condition{lang.L("Sharp at any size"), fine}
	}
	text := words.Number(ppi, 0)
	switch {
	case ppi < artcheck.Coarse:
		return condition{fmt.Sprintf(lang.L("%s ppi, too coarse"), text), failed}
	case ppi < artcheck.Soft:
		return condition{fmt.Sprintf(lang.L("%s ppi, soft"), text), warning}
	}
	return condition{fmt.Sprintf(lang.L("%s ppi, sharp"), text), fine}
}

// reason says why artwork is not shown. The row names the file already, so what opening
// it puts before the reason is left out.
func reason(err error) string {
	if around, is := err.(interface{ Unwrap() []error }); is && len(around.Unwrap()) == 1 {
		err = around.Unwrap()[0]
	}
	text := words.Error(err)
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:] + "."
}

// leastPPI returns the resolution of a piece where it is least, and false where it has
// none.
func leastPPI(snapshot *document.Snapshot, index int) (least float64, found bool) {
	for i := range snapshot.Placed {
		placed := &snapshot.Placed[i]
		if placed.Index != index {
			continue
		}
		ppi, has := artcheck.PixelsPerInch(placed, snapshot.Hung[index].Art)
		if has && (!found || ppi < least) {
			least, found = ppi, true
		}
	}
	return least, found
}
