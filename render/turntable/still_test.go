package turntable_test

import (
	"encoding/base64"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// Where a browser cannot draw in space, or runs no scripts, the still picture and the
// reason show; without scripts there is no button that would do nothing.
func TestStillPictureStandsIn(t *testing.T) {
	b := openBrowser(t, false)
	p := demo(t).page
	red := image.NewRGBA(image.Rect(0, 0, 400, 300))
	for i := range red.Pix {
		red.Pix[i] = []uint8{200, 30, 40, 255}[i%4]
	}
	p.Still = red
	b.screen(800, 600, 1, "light")
	const shown = `({
		Excuse: Array.from(document.querySelectorAll(".excuse")).some((e) => getComputedStyle(e).display !== "none" && e.offsetHeight > 0),
		Foot: getComputedStyle(document.getElementById("foot")).visibility, Print: document.getElementById("print").offsetHeight,
	})`
	var got struct {
		Excuse bool
		Foot   string
		Print  int
	}
	check := func(print bool) {
		t.Helper()
		b.evaluate(shown, &got)
		if !got.Excuse || got.Foot != "hidden" || (got.Print > 0) != print {
			t.Errorf("shown: %+v", got)
		}
		r := b.room()
		x, y := r.middle()
		if c := pixel(b.shot(), int(x), int(y)); apart(c, color.RGBA{200, 30, 40, 255}) > 12 {
			t.Errorf("the middle of the still picture is %v", c)
		}
	}
	b.open(written(t, p), "")
	check(true)
	b.quiet()
	b.call("Emulation.setScriptExecutionDisabled", map[string]any{"value": true}, nil)
	b.bare = true
	b.load(written(t, p), "")
	check(false)
}

// The print is one sheet of A4 with the still picture, the facts and lines to sign on,
// and none of what is for the screen: read with poppler.
func TestPrint(t *testing.T) {
	geomtest.Tool(t, "pdftotext")
	b := openBrowser(t, true)
	j := demo(t)
	b.screen(1280, 800, 1, "dark")
	b.open(written(t, j.page), "")
	var made struct{ Data string }
	b.call("Page.printToPDF", map[string]any{"paperWidth": 8.27, "paperHeight": 11.69, "preferCSSPageSize": true}, &made)
	data, err := base64.StdEncoding.DecodeString(made.Data)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "print.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if folder := os.Getenv(shotsEnv); folder != "" {
		_ = os.WriteFile(filepath.Join(folder, "print.pdf"), data, 0o600)
	}
	text := strings.Join(strings.Fields(string(geomtest.Run(t, "pdftotext", "-layout", path, "-"))), " ")
	for _, want := range []string{j.page.Title, "Matt coated, 190 g/m²", "C 62 M 34 Y 66 K 18", "5 mm is safer", "Signature", "Name", "Date", "Changes"} {
		if !strings.Contains(text, want) {
			t.Errorf("the print lacks %q", want)
		}
	}
	for _, bar := range []string{"Drag to turn", "From above", "Fill in", "newer browser"} {
		if strings.Contains(text, bar) {
			t.Errorf("the print shows %q", bar)
		}
	}
	if info := string(geomtest.Run(t, "pdfinfo", path)); !regexp.MustCompile(`Pages:\s+1\n`).MatchString(info) {
		t.Errorf("not one sheet: %s", info)
	}
	images := string(geomtest.Run(t, "pdfimages", "-list", path))
	if !regexp.MustCompile(`\s1200\s+900\s`).MatchString(images) {
		t.Errorf("no still picture of 1200 × 900 in the print:\n%s", images)
	}
}
