package entry_test

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
)

// lineDesk is an entry that takes any text but "wrong", in a window.
type lineDesk struct {
	line   *entry.Line
	window fyne.Window
	taken  []string
}

func newLineDesk(t *testing.T, build func(label, help, hint string, take func(string) string) *entry.Line) *lineDesk {
	t.Helper()
	test.NewTempApp(t)
	d := &lineDesk{}
	d.line = build("Paper", "What paper costs.", "not known", func(text string) string {
		if text == "wrong" {
			return "That is wrong."
		}
		d.taken = append(d.taken, text)
		d.line.Put(text)
		return ""
	})
	d.window = test.NewTempWindow(t, d.line)
	d.window.Resize(fyne.NewSize(300, 120))
	return d
}

func (d *lineDesk) press(name fyne.KeyName) {
	d.line.Focusable().TypedKey(&fyne.KeyEvent{Name: name})
}

// A line stays empty under its hint until a text is taken over, and can be emptied again.
func TestLine(t *testing.T) {
	d := newLineDesk(t, entry.NewLine)
	d.line.SetUnit("per kg")
	if shown := test.RenderToMarkup(d.window.Canvas()); !strings.Contains(shown, "not known") || !strings.Contains(shown, "per kg") {
		t.Errorf("an empty line is shown as\n%s", shown)
	}
	test.Type(d.line.Focusable(), "1.60")
	d.press(fyne.KeyReturn)
	d.line.Focusable().FocusLost() // takes nothing over a second time
	test.Type(d.line.Focusable(), "2")
	d.line.Focusable().FocusLost()
	d.line.Focusable().FocusGained()
	d.press(fyne.KeyDelete)
	d.press(fyne.KeyReturn)
	if want := []string{"1.60", "2", ""}; !slices.Equal(d.taken, want) || d.line.Text() != "" {
		t.Errorf("taken over are %q, want %q; shown is %q", d.taken, want, d.line.Text())
	}
}

// What cannot be taken over stays beside its complaint; Escape and Forget drop it, and
// arrows only move the cursor.
func TestLineThatIsWrong(t *testing.T) {
	d := newLineDesk(t, entry.NewLine)
	d.line.Put("old")
	test.Type(d.line.Focusable(), "wrong")
	d.press(fyne.KeyReturn)
	if d.line.Text() != "wrong" || d.line.Message() != "That is wrong." {
		t.Errorf("shown are %q and %q", d.line.Text(), d.line.Message())
	}
	d.press(fyne.KeyUp)
	d.line.Focusable().TypedRune('g')
	if d.line.Text() != "gwrong" {
		t.Errorf("after an arrow up and a letter the line is %q", d.line.Text())
	}
	d.press(fyne.KeyEscape)
	if d.line.Text() != "old" || d.line.Message() != "" {
		t.Errorf("Escape leaves %q and %q", d.line.Text(), d.line.Message())
	}
	test.Type(d.line.Focusable(), "new")
	d.line.Forget()
	if d.line.Text() != "old" || len(d.taken) != 0 {
		t.Errorf("Forget leaves %q and takes over %q", d.line.Text(), d.taken)
	}
	d.line.Complain("Not with these others.")
	if d.line.Message() != "Not with these others." {
		t.Errorf("the complaint about the value is %q", d.line.Message())
	}
}

// A wide line has its label above it, so it is higher.
func TestWideLine(t *testing.T) {
	narrow, wide := newLineDesk(t, entry.NewLine), newLineDesk(t, entry.NewWideLine)
	if wide.line.HeightFor(300) <= narrow.line.HeightFor(300) {
		t.Errorf("wide it is %g high, else %g", wide.line.HeightFor(300), narrow.line.HeightFor(300))
	}
}
