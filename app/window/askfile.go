package window

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/keyrelay"
	"gussetwright/app/notice"
	"gussetwright/app/places"
	"gussetwright/app/steady"
)

// askFile asks for the folder and the name of a file to write. The toolkit's own
// dialog for this empties a file as soon as it is chosen; ours leaves it alone, so
// that a save that fails loses nothing.
type askFile struct {
	window *Window
	title  string
	ending string // such as ".gusset"; put behind a name that lacks it
	then   func(path string)

	form   *dialog.CustomDialog
	folder *askEntry
	name   *askEntry
}

// ask shows the question, with a folder and a name to begin with.
func (a *askFile) ask(folder, name string) {
	a.folder, a.name = a.newEntry(folder), a.newEntry(name)
	form := widget.NewForm(
		widget.NewFormItem(lang.L("Name"), a.name),
		widget.NewFormItem(lang.L("Folder"), container.NewBorder(nil, nil, nil, a.newButton(lang.L("Browse…"), nil, a.browse), a.folder)),
	)
	save := a.newButton(lang.L("Save"), theme.ConfirmIcon(), a.save)
	save.Importance = widget.HighImportance
	a.form = dialog.NewCustomWithoutButtons(a.title, form, a.window.window)
	a.form.SetButtons([]fyne.CanvasObject{a.newButton(lang.L("Cancel"), theme.CancelIcon(), a.cancel), save})
	a.form.Resize(fyne.NewSize(min(640, a.window.window.Canvas().Size().Width*0.9), 0))
	a.form.Show()
	a.window.window.Canvas().Focus(a.name)
}

func (a *askFile) cancel() { a.form.Hide() }

func (a *askFile) save() {
	a.form.Hide()
	a.confirm()
}

// answers takes the keys that end the question: Enter does what the part in focus is for,
// and Escape cancels. It tells whether the key is one of them.
func (a *askFile) answers(key *fyne.KeyEvent, enter func()) bool {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		enter()
	case fyne.KeyEscape:
		a.cancel()
	default:
		return false
	}
	return true
}

func (a *askFile) newButton(text string, icon fyne.Resource, tapped func()) *keyrelay.Button {
	b := keyrelay.New(text, tapped, func(key *fyne.KeyEvent) bool { return a.answers(key, tapped) })
	b.Icon = icon
	return b
}

// askEntry is an entry of the question.
type askEntry struct {
	steady.Entry
	of *askFile
}

func (a *askFile) newEntry(text string) *askEntry {
	e := &askEntry{of: a}
	e.ExtendBaseWidget(e)
	e.SetText(text)
	return e
}

// TypedKey is part of fyne.Focusable.
func (e *askEntry) TypedKey(key *fyne.KeyEvent) {
	if !e.of.answers(key, e.of.save) {
		e.Entry.TypedKey(key)
	}
}

func (a *askFile) browse() {
	chooser := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err != nil {
			a.window.alarm(fmt.Errorf(lang.L("the folder cannot be opened: %s; choose another"), err))
		} else if folder != nil {
			a.folder.SetText(filepath.FromSlash(folder.Path()))
		}
	}, a.window.window)
	places.Show(chooser, a.window.window, a.folder.Text)
}

// path returns the file that is named, or "" when no name is.
func (a *askFile) path() string {
	name := strings.TrimSpace(a.name.Text)
	if name == "" {
		return ""
	}
	if !strings.EqualFold(filepath.Ext(name), a.ending) {
		name += a.ending
	}
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(strings.TrimSpace(a.folder.Text), name)
}

// confirm goes on with the file, asking first when there is one already.
func (a *askFile) confirm() {
	path := a.path()
	again := func() { a.ask(a.folder.Text, a.name.Text) }
	switch _, err := os.Lstat(path); {
	case path == "":
		a.window.bar.Say(notice.Alarm, lang.L("The file needs a name."),
			notice.Answer{Label: lang.L("Enter one"), Main: true, Do: again}, notice.Answer{Label: lang.L("Cancel")})
	case err == nil && path != a.window.file.Path():
		a.window.bar.Say(notice.Ask, fmt.Sprintf(lang.L("%s exists already. Replace it?"), path),
			notice.Answer{Label: lang.L("Replace it"), Do: func() { a.then(path) }},
			notice.Answer{Label: lang.L("Choose another name"), Main: true, Do: again},
			notice.Answer{Label: lang.L("Cancel")})
	default:
		a.then(path)
	}
}

// folderToBegin returns the folder of the project, or one that people keep their
// files in.
func (w *Window) folderToBegin() string {
	if path := w.file.Path(); path != "" {
		return filepath.Dir(path)
	}
	return places.Usual()
}
