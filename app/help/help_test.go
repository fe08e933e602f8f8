package help

import (
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/release"
	"gussetwright/app/settings"
	"gussetwright/app/shortcuts"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

func page(t *testing.T, look settings.Appearance, scale float64) (*Page, fyne.Window) {
	t.Helper()
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	set.SetAppearance(look)
	set.SetTextScale(scale)
	appearance.Wear(app, set)
	p := New("0.1.0", func() {})
	window := test.NewTempWindow(t, p)
	window.SetPadded(false)
	window.Resize(fyne.NewSize(1100, 800))
	window.Resize(fyne.NewSize(1100, 801)) // wrapped text knows its height once it has its width
	return p, window
}

func TestHelpPictures(t *testing.T) {
	const tolerance = 0.002
	for name, look := range map[string]settings.Appearance{"light": settings.Light, "dark": settings.Dark} {
		p, window := page(t, look, 1)
		for number, section := range map[int]string{0: "keys", 2: "reading", 4: "terms", 5: "cautions"} {
			p.GoTo(number)
			geomtest.GoldenPicture(t, "help/"+section+"-"+name+".png", window.Canvas().Capture(), tolerance)
		}
	}
}

func TestEveryShortcutIsListed(t *testing.T) {
	p, _ := page(t, settings.Light, 1)
	shown := textsIn(p.keys)
	for _, group := range shortcuts.Groups() {
		for _, s := range group.Shortcuts {
			if !slices.Contains(shown, s.Keys()) || !slices.Contains(shown, s.Label) {
				t.Errorf("%s (%s) is not listed", s.Label, s.Keys())
			}
		}
	}
}

// The page can begin with any group of keys; all others follow as they stand in the table.
func TestKeysBeginWithAGroup(t *testing.T) {
	p, _ := page(t, settings.Light, 1)
	var titles []string
	for _, group := range shortcuts.Groups() {
		titles = append(titles, group.Title)
	}
	heads := func() (heads []string) {
		for _, text := range textsIn(p.keys) {
			if slices.Contains(titles, text) && !slices.Contains(heads, text) {
				heads = append(heads, text)
			}
		}
		return heads
	}
	rows := len(textsIn(p.keys))
	last := len(titles) - 1
	if p.BeginWith(shortcuts.InLesson()); titles[last] != shortcuts.InLesson() || !slices.Equal(heads(), append(titles[last:], titles[:last]...)) {
		t.Errorf("the groups are %q", heads())
	}
	if now := len(textsIn(p.keys)); now != rows {
		t.Errorf("%d texts, there were %d", now, rows)
	}
}

func TestEveryChangeIsListed(t *testing.T) {
	p, _ := page(t, settings.Light, 1)
	shown := textsIn(p.text.Objects[len(p.text.Objects)-1])
	versions, err := release.Changes()
	if err != nil {
		t.Fatal(err)
	}
	for _, version := range versions {
		if head := "Version " + version.Version + ", " + version.Date.Format("2006-01-02"); !slices.Contains(shown, head) {
			t.Errorf("%s is not listed", head)
		}
		for _, part := range version.Parts {
			for _, item := range part.Items {
				if !slices.Contains(shown, "•  "+item) {
					t.Errorf("%s: %q is not listed", version.Version, item)
				}
			}
		}
	}
}

func textsIn(content fyne.CanvasObject) []string {
	var texts []string
	for _, object := range test.LaidOutObjects(content) {
		if label, is := object.(*widget.Label); is {
			texts = append(texts, label.Text)
		}
	}
	return texts
}

// Mountain and valley differ by their dashes alone: as black and white the samples
// are different pictures.
func TestSamplesDifferWithoutColour(t *testing.T) {
	test.NewTempApp(t)
	roles := []scene.Role{scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching, scene.Gluing, scene.Bleed, scene.ContentArea, scene.Dimensions}
	seen := map[string]scene.Role{}
	for _, role := range roles {
		shape := silhouette(newSample(role).draw(360, 90))
		if !strings.Contains(shape, "#") {
			t.Errorf("%s: the sample is blank", role)
		}
		if other, is := seen[shape]; is {
			t.Errorf("%s and %s look the same in black and white", role, other)
		}
		seen[shape] = role
	}
}

func silhouette(picture image.Image) string {
	var shape strings.Builder
	paper := picture.At(0, 0)
	for y := range picture.Bounds().Dy() {
		for x := range picture.Bounds().Dx() {
			if picture.At(x, y) == paper {
				shape.WriteByte('.')
			} else {
				shape.WriteByte('#')
			}
		}
	}
	return shape.String()
}

func TestContentsLeadToTheirSection(t *testing.T) {
	for _, scale := range []float64{1, 1.8} {
		p, _ := page(t, settings.Light, scale)
		last := float32(-1)
		for i := range p.sections {
			p.GoTo(i)
			if p.scroll.Offset.Y < last {
				t.Errorf("section %d lies above the one before it", i)
			}
			if i > 0 && p.scroll.Offset.Y == 0 {
				t.Errorf("section %d is at the head of the page", i)
			}
			last = p.scroll.Offset.Y
		}
		if least := p.MinSize(); least.Width > 1024 || least.Height > 700 {
			t.Errorf("at text scale %g the page needs %v", scale, least)
		}
	}
}

func TestPageByKeyboard(t *testing.T) {
	p, window := page(t, settings.Light, 1)
	left := 0
	p.leave = func() { left++ }
	window.Canvas().Focus(p.FirstFocus())
	key := func(name fyne.KeyName) float32 {
		window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
		return p.scroll.Offset.Y
	}
	line := key(fyne.KeyDown)
	pageFurther := key(fyne.KeyPageDown)
	end := key(fyne.KeyEnd)
	if !(0 < line && line < pageFurther && pageFurther < end) {
		t.Errorf("down %g, page down %g, end %g", line, pageFurther, end)
	}
	if up := key(fyne.KeyPageUp); up >= end {
		t.Errorf("page up from %g to %g", end, up)
	}
	if head := key(fyne.KeyHome); head != 0 {
		t.Errorf("home leads to %g", head)
	}
	if head := key(fyne.KeyUp); head != 0 {
		t.Errorf("up from the head leads to %g", head)
	}
	key(fyne.KeyEscape)
	if left != 1 {
		t.Errorf("Escape led back %d times", left)
	}
}

// The list of libraries is that of what the window is linked from, as the go command
// tells, and each licence is the one whose words stand in the library's own file.
func TestLibrariesAndTheirLicences(t *testing.T) {
	list := exec.Command("go", "list", "-e", "-deps", "-f", "{{with .Module}}{{.Path}} {{.Dir}}{{end}}", "fyne.io/fyne/v2/app", "../window", "../../cmd/gwbatch")
	list.Env = append(os.Environ(), "GOOS=linux", "GOARCH=amd64", "CGO_ENABLED=1")
	output, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	folders := map[string]string{}
	for _, line := range strings.Split(string(output), "\n") {
		if module, folder, is := strings.Cut(line, " "); is && module != "gussetwright" {
			folders[module] = folder
		}
	}
	for _, one := range libraries {
		folder, linked := folders[one.module]
		if !linked {
			t.Errorf("%s is listed but no part of the program", one.module)
			continue
		}
		delete(folders, one.module)
		if text := licenceText(t, folder); !says(text, one.licence) {
			t.Errorf("%s: the licence file does not read like %s", one.module, one.licence)
		}
	}
	for module := range folders {
		t.Errorf("%s is part of the program but not listed", module)
	}
}

func licenceText(t *testing.T, folder string) string {
	t.Helper()
	for _, name := range []string{"LICENSE", "LICENSE.md", "LICENSE.txt", "COPYING", "COPYING.txt"} {
		if text, err := os.ReadFile(filepath.Join(folder, name)); err == nil {
			return strings.Join(strings.Fields(string(text)), " ")
		}
	}
	t.Errorf("no licence in %s", folder)
	return ""
}

// says tells whether a text has the words by which a licence is known.
func says(text, licence string) bool {
	has := func(words string) bool { return strings.Contains(text, words) }
	redistribution := has("Redistribution and use in source and binary forms")
	thirdClause := has("endorse or promote products derived from")
	switch licence {
	case mit:
		return has("Permission is hereby granted, free of charge, to any person") && has("without restriction")
	case bsd3:
		return redistribution && thirdClause
	case bsd2:
		return redistribution && !thirdClause
	case apache:
		return has("Apache License Version 2.0")
	case isc:
		return has("Permission to use, copy, modify, and/or distribute this software for any purpose")
	case freetype:
		return has("The FreeType License")
	}
	return false
}
