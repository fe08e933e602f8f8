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
	"fyne.io/fyne/v2/widget"

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

	folder *steady.Entry
	name   *steady.Entry
}

// ask shows the question, with a folder and a name to begin with.
func (a *askFile) ask(folder, name string) {
	a.folder, a.name = steady.NewEntry(), steady.NewEntry()
	a.folder.SetText(folder)
	a.name.SetText(name)
	browse := widget.NewButton(lang.L("Browse…"), a.browse)
	form := dialog.NewForm(a.title, lang.L("Save"), lang.L("Cancel"), []*widget.FormItem{
		widget.NewFormItem(lang.L("Name"), a.name),
		widget.NewFormItem(lang.L("Folder"), container.NewBorder(nil, nil, nil, browse, a.folder)),
	}, func(confirmed bool) {
		if confirmed {
			a.confirm()
		}
	}, a.window.window)
	form.Resize(fyne.NewSize(min(640, a.window.window.Canvas().Size().Width*0.9), 0))
	form.Show()
	a.window.window.Canvas().Focus(a.name)
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
