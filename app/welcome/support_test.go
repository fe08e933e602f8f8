package welcome

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/settings"
)

// start returns a start page of the usual size in a window, and what was called.
func start(t *testing.T, look settings.Appearance, scale float64, size fyne.Size) (*Start, *calls, fyne.Window) {
	t.Helper()
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	set.SetAppearance(look)
	set.SetTextScale(scale)
	appearance.Wear(app, set)
	set.AddRecent("/home/ada/bags/market-day.gusset")
	set.AddRecent("/home/ada/bags/book shop/winter.gusset")
	did := &calls{}
	page := NewStart(set, did.actions())
	window := test.NewTempWindow(t, page)
	window.SetPadded(false)
	window.Resize(size)
	return page, did, window
}

// calls notes what the page asked for.
type calls struct {
	names []string
	size  [3]float64
	path  string
}

func (c *calls) actions() Actions {
	note := func(name string) func() { return func() { c.names = append(c.names, name) } }
	return Actions{
		FromProduct: note("product"), OpenDemo: note("demo"), Open: note("open"), TakeTour: note("tour"),
		FromSize: func(w, d, h float64) {
			c.names = append(c.names, "size")
			c.size = [3]float64{w, d, h}
		},
		OpenRecent: func(path string) {
			c.names = append(c.names, "recent")
			c.path = path
		},
	}
}
