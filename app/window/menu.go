package window

import (
	"fmt"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/app/shortcuts"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// menu is the main menu with the items that change.
type menu struct {
	window *Window
	main   *fyne.MainMenu
	undo   *fyne.MenuItem
	redo   *fyne.MenuItem
	recent *fyne.MenuItem
	said   string // what undo and redo say, so that the menu is drawn anew only when that changes
}

func (w *Window) newMenu() *menu {
	m := &menu{window: w}
	m.undo = m.sign(appearance.UndoIcon(), m.item(shortcuts.Undo, lang.L("Undo"), w.undo))
	m.redo = m.sign(appearance.RedoIcon(), m.item(shortcuts.Redo, lang.L("Redo"), w.redo))
	m.recent = fyne.NewMenuItem(lang.L("Open recent"), nil)
	m.main = fyne.NewMainMenu(m.file(), m.edit(), m.view(), m.bag(), m.help())
	m.fillRecent()
	w.window.SetMainMenu(m.main)
	return m
}

// item returns a menu item with the keys that the table gives it.
func (m *menu) item(id shortcuts.ID, label string, do func()) *fyne.MenuItem {
	item := fyne.NewMenuItem(label, do)
	if s, found := shortcuts.Find(id); found {
		item.Shortcut = s.Shortcut()
		item.Action = m.window.unlessCovered(item.Shortcut, do)
	}
	return item
}

// sign puts the icon before an item that its button in a pane has.
func (m *menu) sign(icon fyne.Resource, item *fyne.MenuItem) *fyne.MenuItem {
	item.Icon = icon
	return item
}

func (m *menu) file() *fyne.Menu {
	w := m.window
	quit := m.item(shortcuts.Quit, lang.L("Quit"), w.close)
	quit.IsQuit = true
	return fyne.NewMenu(lang.L("File"),
		m.item(shortcuts.New, lang.L("New bag"), w.newProject),
		m.item(shortcuts.Open, lang.L("Open…"), w.openAsked),
		m.recent,
		fyne.NewMenuItem(lang.L("Open the demo"), w.openDemo),
		fyne.NewMenuItemSeparator(),
		m.item(shortcuts.Save, lang.L("Save"), w.save),
		m.item(shortcuts.SaveAs, lang.L("Save as…"), w.saveAs),
		fyne.NewMenuItemSeparator(),
		m.item(shortcuts.Files, lang.L("Write files…"), func() { w.goToStep(shortcuts.Steps) }),
		fyne.NewMenuItem(lang.L("Picture of the folded bag…"), w.savePicture),
		fyne.NewMenuItemSeparator(),
		quit,
	)
}

func (m *menu) edit() *fyne.Menu {
	return fyne.NewMenu(lang.L("Edit"), m.undo, m.redo)
}

func (m *menu) view() *fyne.Menu {
	w := m.window
	return fyne.NewMenu(lang.L("View"),
		m.sign(appearance.FitIcon(), m.item(shortcuts.Fit, lang.L("Show the whole blank"), func() { w.blank.Fit(); w.folded.Fit() })),
		m.sign(appearance.ZoomInIcon(), m.item(shortcuts.ZoomIn, lang.L("Zoom in"), w.zoomIn)),
		m.sign(appearance.ZoomOutIcon(), m.item(shortcuts.ZoomOut, lang.L("Zoom out"), w.zoomOut)),
		m.sign(appearance.MeasureIcon(), m.item(shortcuts.Measure, lang.L("Measure"), func() { w.blank.Measure(!w.blank.Measuring()) })),
		m.item(shortcuts.Meeting, lang.L("Meeting view"), w.toggleMeeting),
		m.item(shortcuts.Lesson, lang.L("Lesson"), w.toggleLesson),
		fyne.NewMenuItemSeparator(),
		m.units(), m.appearance(),
		m.item(shortcuts.LargerText, lang.L("Larger text"), w.largerText),
		m.item(shortcuts.SmallerText, lang.L("Smaller text"), w.smallerText),
		m.languages(),
	)
}

// choices returns a menu item with a submenu of which one entry is checked.
func (m *menu) choices(label string, labels []string, chosen func() int, choose func(int)) *fyne.MenuItem {
	parent := fyne.NewMenuItem(label, nil)
	parent.ChildMenu = fyne.NewMenu("")
	mark := func() {
		for i, item := range parent.ChildMenu.Items {
			item.Checked = i == chosen()
		}
	}
	for i, text := range labels {
		parent.ChildMenu.Items = append(parent.ChildMenu.Items, fyne.NewMenuItem(text, func() {
			choose(i)
			mark()
			m.main.Refresh()
		}))
	}
	mark()
	return parent
}

func (m *menu) units() *fyne.MenuItem {
	set := m.window.set
	labels := []string{lang.L("Millimetres"), lang.L("Centimetres"), lang.L("Inches")}
	return m.choices(lang.L("Units"), labels,
		func() int { return slices.Index(geometry.Units(), set.Unit()) },
		func(i int) { set.SetUnit(geometry.Units()[i]) })
}

func (m *menu) appearance() *fyne.MenuItem {
	w, set := m.window, m.window.set
	all := []settings.Appearance{settings.BySystem, settings.Light, settings.Dark}
	labels := []string{lang.L("As the system"), lang.L("Light"), lang.L("Dark")}
	return m.choices(lang.L("Appearance"), labels,
		func() int { return slices.Index(all, set.Appearance()) },
		func(i int) { w.restyle(func() { set.SetAppearance(all[i]) }) })
}

func (m *menu) languages() *fyne.MenuItem {
	w := m.window
	var codes, names []string
	for _, language := range words.Languages() {
		codes, names = append(codes, language.Code), append(names, language.Name)
	}
	return m.choices(lang.L("Language"), names,
		func() int { return slices.Index(codes, w.set.Language()) },
		func(i int) {
			w.set.SetLanguage(codes[i])
			w.tell(lang.L("The language changes when the program is started again."))
		})
}

func (m *menu) bag() *fyne.Menu {
	w := m.window
	names := []string{
		lang.L("Product"), lang.L("Bag"), lang.L("Carry"), lang.L("Paper"), lang.L("Sheet"), lang.L("Artwork"), lang.L("Quote"),
		lang.L("Files"),
	}
	var items []*fyne.MenuItem
	for i, name := range names {
		items = append(items, m.item(shortcuts.Step(i+1), name, func() { w.goToStep(i + 1) }))
	}
	return fyne.NewMenu(lang.L("Bag"), append(items, fyne.NewMenuItemSeparator(),
		m.item(shortcuts.AddArtwork, lang.L("Add artwork…"), w.addArtwork),
		fyne.NewMenuItemSeparator(),
		m.item(shortcuts.NextFinding, lang.L("Show the next finding"), func() { w.findings.Next(1) }),
		m.item(shortcuts.PreviousFinding, lang.L("Show the previous finding"), func() { w.findings.Next(-1) }))...)
}

func (m *menu) help() *fyne.Menu {
	w := m.window
	return fyne.NewMenu(lang.L("Help"),
		m.item(shortcuts.Help, lang.L("Help"), w.askHelp),
		fyne.NewMenuItem(lang.L("Tour"), w.startTour),
	)
}

// show names what undo and redo would do.
func (m *menu) show(state document.State) {
	undo, redo := changeText(lang.L("Undo"), state.Undo), changeText(lang.L("Redo"), state.Redo)
	if m.said == undo+redo {
		return
	}
	m.said = undo + redo
	m.undo.Label, m.undo.Disabled = undo, state.Undo.Label == ""
	m.redo.Label, m.redo.Disabled = redo, state.Redo.Label == ""
	m.main.Refresh()
}

// changeText puts a change into words, such as "Undo: gusset depth 100 mm → 120 mm".
func changeText(word string, change document.Change) string {
	switch {
	case change.Label == "":
		return word
	case change.Place != "":
		return word + ": " + fmt.Sprintf(lang.L(change.Label), change.File, words.Place(change.Place))
	case change.File != "":
		return word + ": " + fmt.Sprintf(lang.L(change.Label), change.File)
	case change.From == "" && change.To == "":
		return word + ": " + lang.L(change.Label)
	}
	if field, found := bag.FieldAt(change.Path); found && field.Kind() != bag.Number {
		change.From, change.To = lang.L(change.From), lang.L(change.To) // a name is left as it was typed
	}
	return fmt.Sprintf("%s: %s %s → %s", word, lang.L(change.Label), change.From, change.To)
}

// fillRecent lists the files opened last.
func (m *menu) fillRecent() {
	m.recent.ChildMenu = fyne.NewMenu("")
	for _, path := range m.window.set.Recent() {
		m.recent.ChildMenu.Items = append(m.recent.ChildMenu.Items,
			fyne.NewMenuItem(filepath.Base(path)+"  ("+filepath.Dir(path)+")", func() { m.window.openRecent(path) }))
	}
	m.recent.Disabled = len(m.recent.ChildMenu.Items) == 0
}

// showRecent lists the recent files anew.
func (m *menu) showRecent() {
	m.fillRecent()
	m.main.Refresh()
}
