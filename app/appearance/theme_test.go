package appearance

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font/opentype"

	"gussetwright/app/settings"
	"gussetwright/geometry/geomtest"
)

func TestThemeFollowsTheSettings(t *testing.T) {
	set := settings.New(test.NewTempApp(t).Preferences())
	worn := New(set)
	ground := func(variant fyne.ThemeVariant) color.Color { return worn.Color(theme.ColorNameBackground, variant) }
	light, dark := lightPalette[theme.ColorNameBackground], darkPalette[theme.ColorNameBackground]
	for appearance, want := range map[settings.Appearance][2]color.Color{
		settings.BySystem: {light, dark}, settings.Light: {light, light}, settings.Dark: {dark, dark},
	} {
		set.SetAppearance(appearance)
		got := [2]color.Color{ground(theme.VariantLight), ground(theme.VariantDark)}
		if got != want {
			t.Errorf("%s: %v, want %v", appearance, got, want)
		}
	}
}

func TestEverySizeFollowsTheTextScale(t *testing.T) {
	set := settings.New(test.NewTempApp(t).Preferences())
	worn := New(set)
	names := []fyne.ThemeSizeName{
		theme.SizeNameText, theme.SizeNameCaptionText, theme.SizeNameHeadingText, theme.SizeNameSubHeadingText,
		theme.SizeNameInlineIcon, theme.SizeNamePadding, theme.SizeNameInnerPadding, theme.SizeNameLineSpacing,
		theme.SizeNameScrollBar, theme.SizeNameScrollBarSmall, theme.SizeNameSeparatorThickness,
		theme.SizeNameInputBorder, theme.SizeNameInputRadius, theme.SizeNameSelectionRadius,
	}
	before := map[fyne.ThemeSizeName]float32{}
	for _, name := range names {
		before[name] = worn.Size(name)
		if before[name] <= 0 {
			t.Errorf("%s is %g", name, before[name])
		}
	}
	set.SetTextScale(1.5)
	for _, name := range names {
		if got, want := worn.Size(name), before[name]*1.5; got != want {
			t.Errorf("%s: %g, want %g", name, got, want)
		}
	}
}

func TestWearPutsChangesOnTheScreen(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	changes := 0
	app.Settings().AddListener(func(fyne.Settings) { changes++ })
	Wear(app, set)
	after := changes
	set.SetUnit("cm")
	if changes != after {
		t.Error("another unit puts the theme on again")
	}
	set.SetAppearance(settings.Dark)
	set.SetTextScale(1.25)
	if changes != after+2 {
		t.Errorf("the theme was put on %d times, want 2", changes-after)
	}
}

// Both palettes name the same colours, so none of them falls back to another
// palette unseen.
func TestPalettesAreComplete(t *testing.T) {
	if len(lightPalette) != len(darkPalette) {
		t.Errorf("light has %d colours, dark %d", len(lightPalette), len(darkPalette))
	}
	for name := range lightPalette {
		if darkPalette[name] == nil {
			t.Errorf("dark has no %s", name)
		}
	}
}

func TestFontsAreTheGoFonts(t *testing.T) {
	worn := New(settings.New(test.NewTempApp(t).Preferences()))
	seen := map[string]bool{}
	for _, style := range []fyne.TextStyle{
		{}, {Bold: true}, {Italic: true}, {Bold: true, Italic: true}, {Monospace: true}, {Monospace: true, Bold: true},
	} {
		face := worn.Font(style)
		parsed, err := opentype.Parse(face.Content())
		if err != nil {
			t.Errorf("%s: %v", face.Name(), err)
			continue
		}
		family, err := parsed.Name(nil, 1)
		if err != nil || !bytes.HasPrefix([]byte(family), []byte("Go")) {
			t.Errorf("%s is of the family %q (%v)", face.Name(), family, err)
		}
		seen[face.Name()] = true
	}
	if len(seen) != 6 {
		t.Errorf("%d faces, want 6: %v", len(seen), seen)
	}
}

var signs = map[string]func() fyne.Resource{
	"fit": FitIcon, "zoom-in": ZoomInIcon, "zoom-out": ZoomOutIcon, "measure": MeasureIcon,
	"layers": LayersIcon, "views": ViewsIcon, "undo": UndoIcon, "redo": RedoIcon,
}

// The pictures on the start page are in the accent colour.
func TestPicturesAreDrawn(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	Wear(app, set)
	set.SetAppearance(settings.Light)
	want := lightPalette[theme.ColorNamePrimary]
	for name, resource := range map[string]fyne.Resource{"product": FromProductIcon(), "size": FromSizeIcon()} {
		if got := pixelsOf(drawn(t, resource, 96), want); got < 96*96/25 || got > 96*96/3 {
			t.Errorf("%s: %d pixels in the accent colour", name, got)
		}
	}
}

// The small icons can be drawn, are not blank, and take the colour of text.
func TestSignsAreDrawn(t *testing.T) {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	Wear(app, set)
	for _, appearance := range []settings.Appearance{settings.Light, settings.Dark} {
		set.SetAppearance(appearance)
		want := New(set).Color(theme.ColorNameForeground, 0)
		for name, resource := range signs {
			if got := pixelsOf(drawn(t, resource(), 96), want); got < 96*96/25 || got > 96*96/3 {
				t.Errorf("%s in %s: %d pixels in the colour of text", name, appearance, got)
			}
		}
	}
}

// pixelsOf counts the pixels of a colour.
func pixelsOf(picture image.Image, want color.Color) int {
	count := 0
	for y := range picture.Bounds().Dy() {
		for x := range picture.Bounds().Dx() {
			if color.NRGBAModel.Convert(picture.At(x, y)) == color.NRGBAModel.Convert(want) {
				count++
			}
		}
	}
	return count
}

func drawn(t *testing.T, resource fyne.Resource, size float32) image.Image {
	t.Helper()
	picture := canvas.NewImageFromResource(resource)
	window := test.NewTempWindow(t, container.NewWithoutLayout(picture))
	window.SetPadded(false)
	picture.Resize(fyne.NewSquareSize(size))
	window.Resize(fyne.NewSquareSize(size))
	return window.Canvas().Capture()
}

// The picture of the icon is what the drawing of it looks like to another
// renderer, librsvg.
func TestIconPictureIsDrawnFromItsDrawing(t *testing.T) {
	folder := filepath.Join(geomtest.Root(t), "assets", "icon")
	kept, err := os.Open(filepath.Join(folder, "gussetwright.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	got, err := png.Decode(kept)
	if err != nil {
		t.Fatal(err)
	}
	if size := got.Bounds().Size(); size != image.Pt(512, 512) {
		t.Fatalf("the icon is %v pixels, want 512 × 512", size)
	}
	if blank(got) {
		t.Fatal("the icon is blank")
	}
	made := geomtest.Run(t, "rsvg-convert", "-w", "512", "-h", "512", filepath.Join(folder, "gussetwright.svg"))
	want, err := png.Decode(bytes.NewReader(made))
	if err != nil {
		t.Fatal(err)
	}
	if far := differing(got, want); far > 512*512/200 {
		t.Errorf("%d pixels of the picture differ from the drawing; write it anew with rsvg-convert -w 512 -h 512 gussetwright.svg -o gussetwright.png", far)
	}
}

func blank(picture image.Image) bool {
	first := picture.At(256, 256)
	for y := range picture.Bounds().Dy() {
		for x := range picture.Bounds().Dx() {
			if picture.At(x, y) != first {
				return false
			}
		}
	}
	return true
}

// differing counts the pixels that differ by more than a renderer's rounding.
func differing(a, b image.Image) int {
	const rounding = 24 << 8
	count := 0
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			r1, g1, b1, a1 := a.At(x, y).RGBA()
			r2, g2, b2, a2 := b.At(x, y).RGBA()
			if max(apart(r1, r2), apart(g1, g2), apart(b1, b2), apart(a1, a2)) > rounding {
				count++
			}
		}
	}
	return count
}

func apart(a, b uint32) uint32 { return max(a, b) - min(a, b) }

// The toolkit draws the icon as well: the window shows it.
func TestToolkitDrawsTheIcon(t *testing.T) {
	test.NewTempApp(t)
	if blank(drawn(t, ProgramIcon(), 512)) {
		t.Error("the icon is blank")
	}
}
