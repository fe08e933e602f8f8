package lesson

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"math"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/assets"
	"gussetwright/geometry"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
	"gussetwright/render/solid"
	"gussetwright/render/typeface"
)

// inPrint returns the bag of the demo project with its artwork.
func inPrint(t testing.TB) *document.Snapshot {
	t.Helper()
	opened, err := project.Read(bytes.NewReader(assets.Demo), int64(len(assets.Demo)))
	if err != nil {
		t.Fatal(err)
	}
	snapshot, err := document.DeriveWithArt(context.Background(), opened.Spec, opened.Files)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

// luminance is that of WCAG 2.2 (formula from memory), 0 to 1.
func luminance(c color.Color) float64 {
	opaque := color.NRGBAModel.Convert(c).(color.NRGBA)
	light := func(v uint8) float64 {
		if s := float64(v) / 255; s > 0.04045 {
			return math.Pow((s+0.055)/1.055, 2.4)
		}
		return float64(v) / 255 / 12.92
	}
	return 0.2126*light(opaque.R) + 0.7152*light(opaque.G) + 0.0722*light(opaque.B)
}

// contrast is that of two luminances, as WCAG 2.2 has it.
func contrast(a, b float64) float64 { return max((a+0.05)/(b+0.05), (b+0.05)/(a+0.05)) }

// under returns the least and the greatest luminance in the place of a name.
func under(picture *image.RGBA, view flat.View, name scene.Label) (least, most float64) {
	x, y := view.At(name.At)
	size := name.Size * view.Scale
	half := typeface.Advance(name.Text, size, name.Bold) / 2
	along := geometry.Polar(1, -name.Turn) // y is down
	up := geometry.Vec2{X: along.Y, Y: -along.X}
	least = math.Inf(1)
	for forth := -half; forth <= half; forth++ {
		for high := -0.2 * size; high <= 0.8*size; high++ {
			p := along.Scale(forth).Add(up.Scale(high))
			light := luminance(picture.At(int(math.Round(x+p.X)), int(math.Round(y+p.Y))))
			least, most = min(least, light), max(most, light)
		}
	}
	return least, most
}

// The ground under every name is calm, whether there is artwork or glue, in light windows
// and dark ones: no two points have a contrast of more than 1.3 to 1, and letters have one
// of 4.5 to 1 with all of them (WCAG 2.2, success criterion 1.4.3; value from memory).
func TestNamesAreReadOverArtworkAndGlue(t *testing.T) {
	looks := map[bool]solid.Look{false: solid.LightLook(), true: solid.DarkLook()}
	for name, snapshot := range map[string]*document.Snapshot{"in print": inPrint(t), "on colour": derived(t, demo(t)), "on white": derived(t, furnished())} {
		course := newCourse(snapshot)
		s := newSheet()
		for _, stage := range []string{"blank", "seam"} {
			for dark, look := range looks {
				o := order{course: course, width: 900, height: 680, density: 1, letter: 12, top: 30, dark: dark, look: look}
				o.at = place{stageNamed(t, course, stage), 0.5}
				s.giveBack(s.paint(o))
				ink := s.letters.Ink[scene.Legend]
				letters := luminance(ink)
				ink.A = 0 // the ground is looked at
				s.letters.Ink[scene.Legend] = ink
				picture, spread := s.paint(o), layOut(&o)
				names := 0
				for _, item := range s.names[0].Items {
					label, is := item.(scene.Label)
					if !is || label.Anchor != scene.Middle {
						continue // the grain and its name
					}
					names++
					least, most := under(picture, spread.view(&o, 0), label)
					if even := contrast(least, most); even > 1.3 {
						t.Errorf("%s, %s, dark %v: under %q luminances differ by %.2f to 1", name, stage, dark, label.Text, even)
					}
					if read := min(contrast(letters, least), contrast(letters, most)); read < 4.5 {
						t.Errorf("%s, %s, dark %v: the letters of %q have a contrast of %.2f", name, stage, dark, label.Text, read)
					}
				}
				if names < 8 {
					t.Errorf("%s, %s: only %d names", name, stage, names)
				}
				s.plain = plain{} // that the colours are chosen anew
			}
		}
	}
}
