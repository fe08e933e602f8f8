package artcheck_test

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/placement"
	"gussetwright/render/artcheck"
	"gussetwright/render/artwork"
	"gussetwright/render/printed"
)

// The demo as it stands is whole, and stays so while the bag gets wider.
func TestTheDemoIsWhole(t *testing.T) {
	opened := demo(t)
	for _, width := range []float64{190, 200, 240} {
		for _, f := range inspected(demoBag(width, 265), opened, bag.NewArtwork("moor.svg", bag.OnFaces)) {
			if strings.HasPrefix(f.Code, "mark-") {
				t.Errorf("%g mm wide: %s: %s", width, f.Code, f.Message)
			}
		}
	}
}

// A slimmer demo bag cuts the name off. What is cut is told by the connected components
// that ImageMagick finds in a picture of the front: those that touch its left or right
// side, but for the hills, which are higher than any letter. In the drawing no letter
// touches the side.
func TestWhatIsCutIsWhatImageMagickFinds(t *testing.T) {
	opened, cut := demo(t), map[float64]int{}
	for _, width := range []float64{200, 183, 182, 180, 175, 165} {
		spec := demoBag(width, 285)
		spec.Artwork = []bag.Artwork{bag.NewArtwork("moor.svg", bag.OnFaces)}
		b := blank.Lay(spec)
		placed := placement.Lay(&b, func(int) (placement.Source, bool) { return opened.Source, true })
		found := 0
		for _, f := range artcheck.Inspect(&b, []artcheck.Piece{{Art: opened}}, placed) {
			if f.Code == "mark-cut-off" {
				found++
			}
		}
		cut[width] = lettersAtTheSides(t, frontOf(&b, placed, opened))
		if (found == 2) != (cut[width] > 0) || found == 1 {
			t.Errorf("%g mm wide: %d findings on two faces, but ImageMagick finds %d letters at the sides", width, found, cut[width])
		}
	}
	if cut[200] != 0 || cut[180] == 0 || cut[165] == 0 {
		t.Errorf("letters at the sides: %v", cut)
	}
}

const perMM = 6 // pixels

// frontOf returns a picture of the front.
func frontOf(b *blank.Blank, placed []placement.Placed, opened *artwork.Art) image.Image {
	side := printed.NewSide(b, 0, placed, func(int) []*image.RGBA { return opened.Levels }, color.RGBA{255, 255, 255, 255}, color.RGBA{})
	front, _ := b.Pieces[0].Panel("front")
	top := b.Pieces[0].Height - front.Box.Max.Y
	area := image.Rect(int(front.Box.Min.X*perMM+0.5), int(top*perMM+0.5), int(front.Box.Max.X*perMM+0.5), int((top+front.Box.Height())*perMM+0.5))
	return side.Picture(&b.Pieces[0], perMM, printed.Fine).SubImage(area)
}

// component is a line of ImageMagick's list: the box as width, height and place, the
// centre, the area and the colour.
var component = regexp.MustCompile(`(?m)^ *\d+: (\d+)x(\d+)\+(\d+)\+(\d+) \S+ (\d+) (?:s?rgba?|gray)\(0`)

func lettersAtTheSides(t *testing.T, front image.Image) (count int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "front.png")
	file, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(file, front); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	size := front.Bounds().Size()
	ground := color.RGBAModel.Convert(front.At(front.Bounds().Min.X+size.X/2, front.Bounds().Min.Y+5*perMM)).(color.RGBA)
	list := geomtest.Run(t, "convert", path, "-alpha", "off", "-fuzz", "20%",
		"-fill", "white", "-opaque", fmt.Sprintf("rgb(%d,%d,%d)", ground.R, ground.G, ground.B), "-fuzz", "0", "-fill", "black", "+opaque", "white",
		"-define", "connected-components:verbose=true", "-connected-components", "8", "null:")
	whole := 0
	for _, line := range component.FindAllStringSubmatch(string(list), -1) {
		var box [5]int
		for i := range box {
			box[i], _ = strconv.Atoi(line[i+1]) // digits, as the pattern asks
		}
		width, height, x, area := box[0], box[1], box[2], box[4]
		switch {
		case area < perMM*perMM || height > 40*perMM:
		case x == 0 || x+width == size.X:
			count++
		default:
			whole++
		}
	}
	if whole < 4 {
		t.Fatalf("ImageMagick finds %d marks within the front:\n%s", whole, list)
	}
	return count
}
