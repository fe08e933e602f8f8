// Package pagetest holds what the tests of the pages of the steps share: a bench, a
// window for a page, and hands that find, type and press. Only tests import it.
package pagetest

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/app/steppage"
	"gussetwright/geometry/bag"
)

// NewBench returns a bench with a bag on it, in an app that is light or dark. Nothing is
// done beside the window, and nobody listens to explanations.
func NewBench(t testing.TB, spec bag.Spec, look settings.Appearance) *steppage.Bench {
	t.Helper()
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	set.SetAppearance(look)
	appearance.Wear(app, set)
	app.Settings().SetTheme(appearance.New(set))
	doc := document.New()
	doc.Load(project.Project{Spec: spec})
	return &steppage.Bench{
		Doc: doc, Look: focus.New(), Settings: set, Explain: func(entry.Explained) {}, Bring: func(fyne.CanvasObject) {},
	}
}

// Show returns a window with a page, which follows the bag and the unit of the user until
// the test ends.
func Show(t testing.TB, page *steppage.Page) fyne.Window {
	t.Helper()
	window := test.NewTempWindow(t, entry.NewScroll(page.Column))
	window.SetPadded(false)
	window.Resize(fyne.NewSize(308, 1250)) // what the list of steps leaves of a panel 400 wide
	page.Follow(page.Doc.State())
	t.Cleanup(page.Doc.Listen(page.Follow))
	page.Settings.Listen(func() { page.Follow(page.Doc.State()) })
	t.Cleanup(page.Close)
	return window
}

// Markup returns what a window shows, as text.
func Markup(window fyne.Window) string { return test.RenderToMarkup(window.Canvas()) }

// First returns the first object of a kind in what a column holds, hidden or not.
func First[T fyne.CanvasObject](column interface{ Objects() []fyne.CanvasObject }) (first T) {
	for _, object := range column.Objects() {
		if one, ok := object.(T); ok {
			return one
		}
		if inner, ok := object.(interface{ Objects() []fyne.CanvasObject }); ok {
			if one := First[T](inner); any(one) != any(first) {
				return one
			}
		}
	}
	return first
}

// All returns every shown object of a kind in another, in the order of the page.
func All[T fyne.CanvasObject](object fyne.CanvasObject) (list []T) {
	if !object.Visible() {
		return nil
	}
	if one, ok := object.(T); ok {
		list = append(list, one)
	}
	if holder, ok := object.(fyne.Widget); ok {
		for _, inner := range test.WidgetRenderer(holder).Objects() {
			list = append(list, All[T](inner)...)
		}
	}
	return list
}

// Explained returns the shown object of a kind that explains itself under a title, nil
// where there is none.
func Explained[T entry.Explained](in fyne.CanvasObject, title string) (none T) {
	for _, one := range All[T](in) {
		if name, _ := one.Explanation(); name == title {
			return one
		}
	}
	return none
}

// Pressable is what can be pressed and explains itself, such as the head of a drawer.
type Pressable interface {
	entry.Explained
	fyne.Focusable
	fyne.Tappable
}

// Slots returns the entries of fields in what a column holds, hidden or not.
func Slots(column interface{ Objects() []fyne.CanvasObject }) (list []*steppage.Slot) {
	for _, object := range column.Objects() {
		if s, ok := object.(*steppage.Slot); ok {
			list = append(list, s)
		} else if inner, ok := object.(interface{ Objects() []fyne.CanvasObject }); ok {
			list = append(list, Slots(inner)...)
		}
	}
	return list
}

// Texts returns what the shown texts in an object say, in the order of the page.
func Texts(object fyne.CanvasObject) (list []string) {
	for _, text := range All[*entry.Text](object) {
		list = append(list, text.Text())
	}
	return list
}

// Says tells whether a shown text in an object contains words.
func Says(object fyne.CanvasObject, words string) bool {
	return slices.ContainsFunc(Texts(object), func(text string) bool { return strings.Contains(text, words) })
}

// Enter types a text in the place of what stands in a line, and takes it over.
func Enter(line interface{ Focusable() fyne.Focusable }, text string) {
	typing := line.Focusable()
	test.Type(typing, text) // which selects what is there
	if text == "" {
		typing.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	}
	typing.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// Choose chooses a row of a table, counted from 0, by keys.
func Choose(table *steppage.Table, row int) {
	fyne.CurrentApp().Driver().CanvasForObject(table).Focus(table)
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	for range row {
		table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
	table.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// UndoSteps counts the steps that can be undone, which it does and undoes.
func UndoSteps(doc *document.Document) int {
	steps := 0
	for doc.State().Undo.Label != "" {
		doc.Undo()
		steps++
	}
	for range steps {
		doc.Redo()
	}
	return steps
}
