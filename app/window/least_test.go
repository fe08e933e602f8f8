package window

import (
	"testing"

	"gussetwright/app/appearance"
	"gussetwright/app/settings"
)

// At every text size that can be chosen the window fits a small screen, at every step.
func TestWindowFitsASmallScreen(t *testing.T) {
	const width, height = 1024, 700
	for _, scale := range []float64{1, 1.3, 1.6, 2} {
		app := newApp(t)
		set := settings.New(app.Preferences())
		set.SetTextScale(scale)
		app.Settings().SetTheme(appearance.New(set))
		w := openedIn(t, app, demoFile(t), t.TempDir())
		for step := 1; step <= 8; step++ {
			w.goToStep(step)
			if least := w.layers.MinSize(); least.Width > width || least.Height > height {
				t.Errorf("text size %g, step %d: the window takes %g × %g, want at most %d × %d", scale, step, least.Width, least.Height, width, height)
			}
		}
	}
}
