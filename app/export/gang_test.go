package export_test

import (
	"bytes"
	"context"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

func familyOf(t *testing.T, change func(*bag.Spec)) *document.Snapshot {
	t.Helper()
	spec := bag.Default()
	spec.Name = "Large"
	spec.Family = []bag.Size{
		{Name: "Medium", Width: 180, Gusset: 80, Height: 240, Quantity: 1500},
		{Name: "Small", Width: 120, Gusset: 60, Height: 160, Quantity: 3000},
	}
	change(&spec)
	snapshot, err := document.DeriveWithArt(context.Background(), spec, nil)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

func write(t *testing.T, snapshot *document.Snapshot, only string) ([]string, error) {
	t.Helper()
	kinds, err := export.Choose(only)
	if err != nil {
		t.Fatal(err)
	}
	job := export.Job{Folder: t.TempDir(), Project: "family", Snapshot: snapshot, Date: time.Date(2026, 3, 31, 0, 0, 0, 0, time.UTC), Kinds: kinds}
	return export.Write(context.Background(), job, func(float64, string) {})
}

// Poppler finds a page as large as the sheet for every form, and on each how many sheets
// are to be printed of it: together they make every bag.
func TestGangedSheets(t *testing.T) {
	paths, err := write(t, familyOf(t, func(*bag.Spec) {}), "gang,gang-dxf")
	if err != nil {
		t.Fatal(err)
	}
	if len(paths) != 2 || filepath.Base(paths[0]) != "family-gang.pdf" || filepath.Base(paths[1]) != "family-gang.dxf" {
		t.Fatalf("wrote %q", paths)
	}
	text := string(geomtest.Run(t, geomtest.Tool(t, "pdftotext"), "-layout", paths[0], "-"))
	made := map[string]int{}
	pages := regexp.MustCompile(`(\d+) sheets to print, without make-ready: (.+)`).FindAllStringSubmatch(text, -1)
	for _, page := range pages {
		for _, part := range strings.Split(page[2], ", ") {
			count, name, _ := strings.Cut(strings.TrimSpace(part), " × ")
			name, _, _ = strings.Cut(name, "  ") // the legend stands beside it
			made[name] += number(t, page[1]) * number(t, count)
		}
	}
	for name, want := range map[string]int{"Large": 1050, "Medium": 1575, "Small": 3150} { // 5 % spoilage
		if made[name] < want {
			t.Errorf("%d of %s are made, want at least %d\n%s", made[name], name, want, text)
		}
	}
	info := geomtest.Run(t, geomtest.Tool(t, "pdfinfo"), "-box", paths[0])
	// A TrimBox of 1000 × 700 mm, in points of 1/72 inch.
	box := regexp.MustCompile(`TrimBox:\s+([\d.]+)\s+([\d.]+)\s+([\d.]+)\s+([\d.]+)`).FindSubmatch(info)
	if box == nil || !bytes.Contains(info, []byte("Pages:           "+strconv.Itoa(len(pages)))) {
		t.Fatalf("%d forms are told of in\n%s", len(pages), info)
	}
	width, height := points(t, box[3])-points(t, box[1]), points(t, box[4])-points(t, box[2])
	if width < 2834 || width > 2835 || height < 1984 || height > 1985 {
		t.Errorf("trim box %g × %g points, want 2834.6 × 1984.3", width, height)
	}
}

func TestGangedSheetsNeedAFamilyThatFits(t *testing.T) {
	for _, test := range []struct {
		change func(*bag.Spec)
		says   string
	}{
		{func(s *bag.Spec) { s.Family = nil }, "one bag only"},
		{func(s *bag.Spec) { s.Family[0].Width = 480; s.Body.Seams = bag.SeamsOne }, "the blank of Medium does not fit the sheet"},
		{func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo }, "Large has two seams"},
	} {
		if _, err := write(t, familyOf(t, test.change), "gang"); err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%v, want %q", err, test.says)
		}
		// Among all kinds they are left out.
		for _, kind := range export.Kinds() {
			if kind.OfFamily && kind.Files("family", familyOf(t, test.change)) != nil {
				t.Errorf("%s: %s is not left out", test.says, kind.Name)
			}
		}
	}
}

func number(t *testing.T, text string) int {
	t.Helper()
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func points(t *testing.T, text []byte) float64 {
	t.Helper()
	p, err := strconv.ParseFloat(string(text), 64)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
