package steps

import (
	"image/png"
	"os"
	"testing"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
)

func TestLook(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	appearance.Wear(app, set)
	for _, look := range []struct{a settings.Appearance; scale float64; w,h float32}{{settings.Light,1,330,800},{settings.Dark,1,330,1700},{settings.Light,1.5,330,1700},{settings.Light,1.5,460,1200}} {
		set.SetAppearance(look.a)
		set.SetTextScale(look.scale)
		doc := document.New()
		spec := doc.State().Spec
		spec.Body.SeamFlap = 8
		spec.Handle.Drop = 12
		doc.Set(spec)
		panel := New(doc, focus.New(), set, widget.NewLabel("files"))
		w := test.NewTempWindow(t, panel)
		w.SetPadded(false)
		w.Resize(fyne.NewSize(look.w, look.h))
		for i := range stepCount {
			panel.Select(i)
			f, _ := os.Create(fmt.Sprintf("/tmp/steplook/%s-%g-%g-%d.png", look.a, look.scale, look.w, i))
			png.Encode(f, w.Canvas().Capture())
			f.Close()
		}

	}
}
