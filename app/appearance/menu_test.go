package appearance

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/settings"
)

// The toolkit makes the colour of a menu's keys from that of text. They are to be read
// as well as text, and clearer than those of an entry that cannot be used: 4.5 to 1,
// WCAG 2.2, success criterion 1.4.3 (value from memory).
func TestKeysInMenusCanBeRead(t *testing.T) {
	for _, wanted := range []settings.Appearance{settings.Light, settings.Dark} {
		app := test.NewTempApp(t)
		set := settings.New(app.Preferences())
		set.SetAppearance(wanted)
		app.Settings().SetTheme(New(set))
		ground := theme.Color(theme.ColorNameMenuBackground)
		usable, unusable := keysContrast(t, false, ground), keysContrast(t, true, ground)
		if usable < 4.5 {
			t.Errorf("%s: keys have a contrast of %.2f to 1, want 4.5", wanted, usable)
		}
		if unusable < 4.5 || unusable >= usable {
			t.Errorf("%s: keys of what cannot be used have a contrast of %.2f to 1, want less than the %.2f of the others", wanted, unusable, usable)
		}
	}
}

// keysContrast returns the least contrast of the keys of an entry in a menu.
func keysContrast(t *testing.T, disabled bool, ground color.Color) float64 {
	t.Helper()
	item := fyne.NewMenuItem("Undo", nil)
	item.Shortcut = &desktop.CustomShortcut{KeyName: fyne.KeyZ, Modifier: fyne.KeyModifierControl}
	item.Disabled = disabled
	menu := widget.NewMenu(fyne.NewMenu("", item))
	window := test.NewTempWindow(t, menu)
	window.Resize(fyne.NewSize(200, 100))
	least, keys := math.Inf(1), 0
	for _, object := range test.WidgetRenderer(menu.Items[0].(fyne.Widget)).Objects() {
		if text, is := object.(*canvas.Text); is && text.Text != item.Label {
			keys++
			least = min(least, contrast(over(text.Color, ground), ground))
		}
	}
	if keys == 0 {
		t.Fatal("the menu shows no keys")
	}
	return least
}
