package appearance

import (
	"fyne.io/fyne/v2"

	"gussetwright/app/settings"
)

// Wardrobe dresses pages that are shown in turn. A theme reaches what is in the window
// alone: a page that was not when the look changed would keep sizes and colours of before.
type Wardrobe struct {
	app  fyne.App
	set  *settings.Settings
	worn map[fyne.CanvasObject]dress // by each page that is kept, as it left the window
}

// dress is all that the look of a page depends on.
type dress struct {
	appearance settings.Appearance
	scale      float64
	variant    fyne.ThemeVariant // of the desktop
}

// NewWardrobe returns the wardrobe of pages that were just made.
func NewWardrobe(app fyne.App, set *settings.Settings, pages ...fyne.CanvasObject) *Wardrobe {
	w := &Wardrobe{app: app, set: set, worn: map[fyne.CanvasObject]dress{}}
	for _, page := range pages {
		w.worn[page] = w.present()
	}
	return w
}

func (w *Wardrobe) present() dress {
	return dress{w.set.Appearance(), w.set.TextScale(), w.app.Settings().ThemeVariant()}
}

// Leaves is called when a page leaves the window.
func (w *Wardrobe) Leaves(page fyne.CanvasObject) {
	if _, kept := w.worn[page]; kept {
		w.worn[page] = w.present()
	}
}

// Comes is called once a page is in the window, and dresses it.
func (w *Wardrobe) Comes(page fyne.CanvasObject) {
	if before, kept := w.worn[page]; kept && before != w.present() {
		w.worn[page] = w.present()
		putOn(w.app, w.app.Settings().Theme())
	}
}
