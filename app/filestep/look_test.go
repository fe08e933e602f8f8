package filestep

import (
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"gussetwright/app/export"
	"gussetwright/geometry/bag"
)

func TestLook(t *testing.T) {
	out := os.Getenv("LOOK")
	if out == "" {
		t.Skip()
	}
	for name, variant := range map[string]fyne.ThemeVariant{"light": theme.VariantLight, "dark": theme.VariantDark} {
		folder := filepath.Join(t.TempDir(), "tea")
		r := newRig(t, folder, export.Write, 0)
		test.ApplyTheme(t, fixed{theme.DefaultTheme(), variant})
		shot := func(what string) {
			f, _ := os.Create(filepath.Join(out, name+"-"+what+".png"))
			png.Encode(f, r.window.Canvas().Capture())
			f.Close()
		}
		shot("first")
		r.change(func(s *bag.Spec) { s.Handle.Drop = 4; s.Body.Seams = bag.SeamsTwo })
		r.do()
		r.untick("dieline", "svg", "png")
		r.button.OnTapped()
		r.running.reveal()
		r.running.tell(0.4, "Picture")
		r.window.Resize(fyne.NewSize(330, 1200))
		shot("running")
		r.finish()
		shot("done")
		os.RemoveAll(folder)
		os.WriteFile(folder, nil, 0o600)
		r.button.OnTapped()
		r.finish()
		shot("failed")
	}
}

type fixed struct {
	fyne.Theme
	variant fyne.ThemeVariant
}

func (f fixed) Color(n fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	return f.Theme.Color(n, f.variant)
}
