package pdf

import (
	"image"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"sort"
	"testing"

	"golang.org/x/image/tiff"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// plates are the separations of a page by ink, one pixel to the point. A pixel is
// 0 where the plate prints in full and 255 where it prints nothing.
type plates map[string]*image.Gray

// separate makes the plates of a drawing with Ghostscript's tiffsep, as a press
// would get them.
func separate(t *testing.T, drawing scene.Drawing, overprinting bool) plates {
	t.Helper()
	return separateFile(t, produceFile(t, []scene.Drawing{drawing}, overprinting))
}

func separateFile(t *testing.T, file string) plates {
	t.Helper()
	folder := t.TempDir()
	geomtest.Run(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=tiffsep", "-r72", "-sCompression=none",
		"-sOutputFile="+filepath.Join(folder, "page%d.tif"), file)
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	found := plates{}
	for _, entry := range files {
		ink := regexp.MustCompile(`^page1\((.*)\)\.tif$`).FindStringSubmatch(entry.Name())
		if ink == nil {
			continue // the composite of all plates
		}
		found[ink[1]] = readPlate(t, filepath.Join(folder, entry.Name()))
	}
	return found
}

func readPlate(t *testing.T, path string) *image.Gray {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	picture, err := tiff.Decode(file)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	gray, isGray := picture.(*image.Gray)
	if !isGray {
		t.Fatalf("%s is a %T", path, picture)
	}
	return gray
}

// extremes returns the fullest and the emptiest pixel of a plate.
func extremes(plate *image.Gray) (fullest, emptiest uint8) {
	return slices.Min(plate.Pix), slices.Max(plate.Pix)
}

var processInks = []string{"Cyan", "Magenta", "Yellow", "Black"}

// Source: Ghostscript makes a plate for each step, and no step prints on the
// plates of the process inks.
func TestEachStepHasAPlate(t *testing.T) {
	drawing := page("Plates")
	drawing.Items = slices.DeleteFunc(drawing.Items, func(item scene.Item) bool { return item.Layer() == scene.Artwork })
	found := separate(t, drawing, true)
	want := slices.Clone(processInks)
	for _, role := range scene.Roles()[1:] {
		want = append(want, role.String())
	}
	var got []string
	for ink, plate := range found {
		got = append(got, ink)
		fullest, _ := extremes(plate)
		if isProcess := slices.Contains(processInks, ink); isProcess && fullest != 255 {
			t.Errorf("a step prints on the %s plate, down to %d of 255", ink, fullest)
		} else if !isProcess && fullest == 255 {
			t.Errorf("the %s plate is empty", ink)
		}
	}
	sort.Strings(got)
	sort.Strings(want)
	if !slices.Equal(got, want) {
		t.Errorf("plates %v, want %v", got, want)
	}
}

// Artwork prints in the process inks and on no plate of a step.
func TestArtworkPrintsInProcessInks(t *testing.T) {
	found := separate(t, page("Plates"), true)
	for ink, want := range map[string]uint8{"Cyan": 0, "Magenta": 153, "Yellow": 102, "Black": 255} {
		// 153 and 102 of 255 are 40 and 60 % of ink.
		if fullest, _ := extremes(found[ink]); max(fullest, want)-min(fullest, want) > 1 {
			t.Errorf("%s plate prints down to %d, want %d", ink, fullest, want)
		}
	}
}

// A full cyan page beneath a line 10 mm wide, an area and a large letter.
func covered() scene.Drawing {
	sheet := geometry.RectAt(0, 0, 100, 100)
	thick := line(scene.Cutting, 20, 0, 20, 100)
	thick.Width = 10
	return scene.Drawing{Title: "Covered", Media: sheet, Bleed: sheet, Trim: sheet, Items: []scene.Item{
		thick,
		scene.Fill{Role: scene.Gluing, Path: geometry.RectAt(40, 20, 20, 60).Path()},
		scene.Label{Role: scene.Legend, Text: "M", At: geometry.Vec2{X: 65, Y: 40}, Size: 40, Bold: true},
		scene.Fill{Role: scene.Artwork, Path: sheet.Inset(-1).Path(), Ink: &scene.CMYK{C: 1}},
	}}
}

// Source: Ghostscript. With overprinting the cyan plate is full under line, area
// and letter; without it they are cut out of it.
func TestStepsLeaveArtworkWhole(t *testing.T) {
	pixel := func(mm float64) int { return int(mm * 72 / 25.4) }
	for _, overprinting := range []bool{true, false} {
		found := separate(t, covered(), overprinting)
		cyan := found["Cyan"]
		for ink, x := range map[string]float64{"Cutting": 20, "Gluing": 50, "Legend": 69} {
			column, row := pixel(x), pixel(50) // through the stem of the letter
			if got := found[ink].GrayAt(column, row).Y; got != 0 {
				t.Fatalf("the %s plate prints %d at %g mm, want it full", ink, got, x)
			}
			want := uint8(255)
			if overprinting {
				want = 0
			}
			if got := cyan.GrayAt(column, row).Y; got != want {
				t.Errorf("overprinting %v: cyan is %d under %s, want %d", overprinting, got, ink, want)
			}
		}
		if _, emptiest := extremes(cyan); overprinting && emptiest != 0 {
			t.Errorf("the cyan plate has a gap, up to %d of 255", emptiest)
		}
		if got := cyan.GrayAt(pixel(33), pixel(50)).Y; got != 0 {
			t.Errorf("overprinting %v: cyan is %d beside the line, want it full", overprinting, got)
		}
	}
}
