package turntable_test

import (
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
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

// printed prints the open page on paper of a size in inches, and returns the path of the
// PDF file.
func (b *browser) printed(width, height float64) string {
	b.t.Helper()
	var made struct{ Data string }
	b.call("Page.printToPDF", map[string]any{"paperWidth": width, "paperHeight": height}, &made)
	data, err := base64.StdEncoding.DecodeString(made.Data)
	if err != nil {
		b.t.Fatal(err)
	}
	path := filepath.Join(b.t.TempDir(), "print.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		b.t.Fatal(err)
	}
	if folder := os.Getenv(shotsEnv); folder != "" {
		_ = os.WriteFile(filepath.Join(folder, fmt.Sprintf("print-%d.pdf", b.number)), data, 0o600)
	}
	return path
}

// wordsOf returns the text of a page of a PDF file as poppler reads it, with single
// spaces.
func wordsOf(t *testing.T, path string, page int) string {
	t.Helper()
	number := strconv.Itoa(page)
	return strings.Join(strings.Fields(string(geomtest.Run(t, "pdftotext", "-layout", "-f", number, "-l", number, path, "-"))), " ")
}

// The print is one sheet of A4 or Letter with the still picture, the facts, the choices
// and lines to sign on, and none of what is for the screen: read with poppler.
func TestPrint(t *testing.T) {
	geomtest.Tool(t, "pdftotext")
	b := openBrowser(t, true)
	j := demo(t)
	b.screen(1280, 800, 1, "dark")
	b.open(written(t, j.page), "")
	for name, paper := range map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}} {
		path := b.printed(paper[0], paper[1])
		text := wordsOf(t, path, 1)
		for _, want := range []string{
			j.page.Title, "Matt coated, paper weight 190 g/m²", "about 440 mm with them", "For the printer", "C 62 M 34 Y 66 K 18", "may be folded there",
			"Must be solved before the bag can be made This size needs a larger sheet of paper.", "To be decided, or accepted as it is",
			"Approved", "Approved with the changes above", "Not approved: please show it again", "Version 3 of 25 November 2026", "Only for this bag.",
			"Signature", "Name and company", "Date", "Changes and remarks", "not binding",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the print lacks %q", name, want)
			}
		}
		for _, bar := range []string{"Drag or press", "From above", "Fill in", "newer browser"} {
			if strings.Contains(text, bar) {
				t.Errorf("%s: the print shows %q", name, bar)
			}
		}
		if info := string(geomtest.Run(t, "pdfinfo", path)); !regexp.MustCompile(`Pages:\s+1\n`).MatchString(info) {
			t.Errorf("%s: not one sheet: %s", name, info)
		}
		images := string(geomtest.Run(t, "pdfimages", "-list", path))
		if !regexp.MustCompile(`\s1200\s+900\s`).MatchString(images) {
			t.Errorf("%s: no still picture of 1200 × 900 in the print:\n%s", name, images)
		}
	}
}

// Where the print takes two sheets, that to sign says for what: the approval stays whole,
// with the name, the size, the version and a picture of the bag.
func TestSheetToSignStandsAlone(t *testing.T) {
	geomtest.Tool(t, "pdftotext")
	b := openBrowser(t, true)
	j := demo(t)
	for i := range 12 {
		j.page.Notes = append(j.page.Notes, fmt.Sprintf("A long remark, which is number %d and takes more than a line of the page, as many remarks do that people write down.", i))
	}
	b.screen(1280, 800, 1, "light")
	b.open(written(t, j.page), "")
	path := b.printed(8.5, 11)
	if first := wordsOf(t, path, 1); strings.Contains(first, "Approval") || strings.Contains(first, "Not approved") {
		t.Errorf("the approval begins on the first sheet: %s", first)
	}
	text := wordsOf(t, path, 2)
	for _, want := range append(j.page.Approved, "Approval", j.page.Title, "Changes and remarks", "Approved with the changes above", "Signature") {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet to sign lacks %q: %s", want, text)
		}
	}
	images := string(geomtest.Run(t, "pdfimages", "-list", "-f", "2", "-l", "2", path))
	if !regexp.MustCompile(`\s300\s+400\s`).MatchString(images) {
		t.Errorf("no picture of the bag on the sheet to sign:\n%s", images)
	}
}

// Of the three choices one at most is taken, by the keyboard too, and what was filled in
// is printed.
func TestChoices(t *testing.T) {
	geomtest.Tool(t, "pdftotext")
	b := openBrowser(t, true)
	b.screen(1280, 800, 1, "light")
	b.open(written(t, demo(t).page), "")
	taken := func() (list []bool) {
		b.evaluate(`Array.from(document.querySelectorAll(".choices input")).map((e) => e.checked)`, &list)
		return list
	}
	if got := taken(); !slices.Equal(got, []bool{false, false, false}) {
		t.Errorf("at first taken: %v", got)
	}
	b.evaluate(`document.querySelectorAll(".choices span")[0].click()`, nil)
	b.evaluate(`document.querySelectorAll(".choices input")[0].focus()`, nil)
	b.key("ArrowDown")
	if got := taken(); !slices.Equal(got, []bool{false, true, false}) {
		t.Errorf("after the second was chosen, taken: %v", got)
	}
	b.evaluate(`document.querySelector("textarea").value = "A little more red, please."`, nil)
	if text := wordsOf(t, b.printed(8.27, 11.69), 1); !strings.Contains(text, "A little more red, please.") {
		t.Errorf("the print lacks what was filled in: %s", text)
	}
	b.quiet()
}
