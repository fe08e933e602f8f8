package flipbook

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"image/draw"
	"image/gif"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

func derive(t testing.TB, spec bag.Spec, files map[string][]byte) *document.Snapshot {
	t.Helper()
	snapshot, err := document.DeriveWithArt(context.Background(), spec, files)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

// demo is the bag that comes with the program, with its artwork.
func demo(t testing.TB) *document.Snapshot {
	t.Helper()
	opened, err := project.ReadFrom(bytes.NewReader(assets.Demo))
	if err != nil {
		t.Fatal(err)
	}
	return derive(t, opened.Spec, opened.Files)
}

func encoded(t testing.TB, order Order) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := GIF(context.Background(), &out, order); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// The animation of the demo is small, begins anew, stands long enough to be read, and
// has one palette; what Go's reader makes of it looks like what was drawn.
func TestAnimation(t *testing.T) {
	order := Order{Snapshot: demo(t)}
	data := encoded(t, order)
	if len(data) > mostBytes {
		t.Errorf("%d bytes", len(data))
	}
	if again := encoded(t, order); !bytes.Equal(data, again) {
		t.Error("other bytes the second time")
	}
	read, err := gif.DecodeAll(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	stages := len(fold.Fold(&order.Snapshot.Blank).Stages)
	if read.Config.Width != side || read.Config.Height <= side || read.LoopCount != 0 || len(read.Image) < 8*stages {
		t.Errorf("%d × %d pixels, %d frames, %d loops", read.Config.Width, read.Config.Height, len(read.Image), read.LoopCount)
	}
	long, all := 0, 0
	for _, delay := range read.Delay {
		if all += delay; delay >= beforeMove {
			long++
		}
	}
	if long < 2*stages-2 || all < 100*stages || all > 500*stages {
		t.Errorf("%d frames stand; %d hundredths of a second for %d stages", long, all, stages)
	}
	m, err := newMaker(context.Background(), order)
	if err != nil {
		t.Fatal(err)
	}
	titles, err := m.titles()
	if err != nil {
		t.Fatal(err)
	}
	last := composed(read, len(read.Image)-1)
	want := m.picture(shotOf(stages-1, 1, 0), titles)
	if mean := difference(last, want); mean > 3 {
		t.Errorf("the last frame is off by %.1f of 255 on average", mean)
	}
	// The table of colours is in the file once: frames have none of their own
	// (GIF89a, 20: the first bit of the last byte of a descriptor).
	if tables := bytes.Count(data, paletteBytes(read.Image[0].Palette)); tables != 1 {
		t.Errorf("%d tables of colours", tables)
	}
}

func paletteBytes(palette color.Palette) []byte {
	var table []byte
	for _, c := range palette[:32] {
		r, g, b, _ := c.RGBA()
		table = append(table, byte(r>>8), byte(g>>8), byte(b>>8))
	}
	return table
}

// composed lays the frames up to one over each other, as who shows the file does.
func composed(read *gif.GIF, upTo int) *image.RGBA {
	all := image.NewRGBA(image.Rect(0, 0, read.Config.Width, read.Config.Height))
	for i := range upTo + 1 {
		frame := read.Image[i]
		draw.Draw(all, frame.Rect, frame, frame.Rect.Min, draw.Over)
	}
	return all
}

// difference is the mean difference of the channels of two pictures.
func difference(a, b *image.RGBA) float64 {
	if a.Rect != b.Rect {
		return math.Inf(1)
	}
	sum := 0.0
	for i := range a.Pix {
		sum += math.Abs(float64(a.Pix[i]) - float64(b.Pix[i]))
	}
	return sum / float64(len(a.Pix)) * 4 / 3 // alpha is the same
}

// ImageMagick composes the frames as Go does.
func TestAnimationReadByImageMagick(t *testing.T) {
	data := encoded(t, Order{Snapshot: derive(t, bag.OfSize(120, 60, 150), nil)})
	folder := t.TempDir()
	path := filepath.Join(folder, "folding.gif")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	read, err := gif.DecodeAll(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	geomtest.Run(t, "convert", path, "-coalesce", "-delete", "0--2", filepath.Join(folder, "last.png"))
	file, err := os.ReadFile(filepath.Join(folder, "last.png"))
	if err != nil {
		t.Fatal(err)
	}
	decoded, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	last := image.NewRGBA(decoded.Bounds())
	draw.Draw(last, last.Rect, decoded, image.Point{}, draw.Src)
	if mean := difference(composed(read, len(read.Image)-1), last); mean > 0.5 {
		t.Errorf("the last frame is off by %.2f of 255 on average", mean)
	}
}

// An animation that would be too large loses frames of the motion, and none that stands.
func TestFramesAreLeftOut(t *testing.T) {
	const size = 4
	f := film{palette: make(color.Palette, 256), size: image.Rect(0, 0, size, size)}
	for i := range f.palette {
		f.palette[i] = color.RGBA{uint8(i), 0, 0, 255}
	}
	f.palette[255] = color.RGBA{}
	total := 0
	for i := range 40 {
		next := frame{delay: 7, still: i%10 == 0, look: bytes.Repeat([]byte{uint8(i)}, size*size)}
		total += next.delay
		f.frames = append(f.frames, next)
	}
	for every, want := range map[int]int{1: 40, 2: 4 * 5, 4: 4 * 3, 16: 4} {
		g := f.animation(every)
		delays, stills := 0, 0
		for i, picture := range g.Image {
			delays += g.Delay[i]
			if picture.Pix[0]%10 == 0 {
				stills++
			}
		}
		if len(g.Image) != want || delays != total || stills != 4 {
			t.Errorf("every %d: %d frames, %d of them stand, %d hundredths of a second; want %d, 4, %d", every, len(g.Image), stills, delays, want, total)
		}
	}
}

// A palette has the few colours of a picture as they are, and of many the nearest is
// never far.
func TestPalette(t *testing.T) {
	few := image.NewRGBA(image.Rect(0, 0, 64, 64))
	flags := []color.RGBA{{255, 255, 255, 255}, {0, 105, 217, 255}, {214, 140, 0, 255}, {12, 12, 12, 255}}
	for i := range 64 * 64 {
		few.SetRGBA(i%64, i/64, flags[0])
	}
	for i, c := range flags {
		few.SetRGBA(i, 0, c) // a pixel of each
	}
	seen := census{}
	seen.add(few)
	palette := seen.palette()
	if len(palette) != len(flags)+1 {
		t.Fatalf("%d colours", len(palette))
	}
	match := newMatcher(palette)
	for _, c := range flags {
		if got := palette[match.index(c.R, c.G, c.B)]; got != c {
			t.Errorf("%v becomes %v", c, got)
		}
	}
	random := rand.New(rand.NewPCG(7, 8))
	many := image.NewRGBA(image.Rect(0, 0, 200, 200))
	for i := range 200 * 200 {
		many.SetRGBA(i%200, i/200, color.RGBA{uint8(random.Uint32()), uint8(random.Uint32()), uint8(random.Uint32()), 255})
	}
	seen = census{}
	seen.add(many)
	palette = seen.palette()
	match = newMatcher(palette)
	if len(palette) != colours+1 {
		t.Fatalf("%d colours", len(palette))
	}
	sum := 0.0
	for i, at := range match.all(many) {
		p, q := many.RGBAAt(i%200, i/200), palette[at].(color.RGBA)
		sum += math.Abs(float64(p.R)-float64(q.R)) + math.Abs(float64(p.G)-float64(q.G)) + math.Abs(float64(p.B)-float64(q.B))
	}
	// 255 cells of a cube of 256³ are some 40 wide, so the mean way to their middles
	// is a quarter of that.
	if mean := sum / (3 * 200 * 200); mean > 14 {
		t.Errorf("off by %.1f of 255 on average", mean)
	}
}

// The strip has a picture of each stage, four to a row, the creases lit in those that fold
// some. On A4, 277 mm wide without its margins, its captions are no smaller than 9 points:
// what is usually called readable (value from memory).
func TestStrip(t *testing.T) {
	for name, change := range map[string]func(*bag.Spec){
		"usual": func(*bag.Spec) {}, "too low": func(s *bag.Spec) { s.Body.Gusset, s.Body.Height = 150, 120 },
	} {
		spec := bag.Default()
		change(&spec)
		snapshot := derive(t, spec, nil)
		var out, again bytes.Buffer
		order := Order{Snapshot: snapshot}
		if err := errors.Join(Strip(context.Background(), &out, order), Strip(context.Background(), &again, order)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(out.Bytes(), again.Bytes()) {
			t.Errorf("%s: other bytes the second time", name)
		}
		picture, err := png.Decode(&out)
		if err != nil {
			t.Fatal(err)
		}
		lesson := fold.Fold(&snapshot.Blank)
		rows := (lesson.Foldable + 3) / 4
		if got, want := picture.Bounds().Dx(), 4*(side+gap)-gap; got != want || picture.Bounds().Dy() < rows*(side+60) {
			t.Errorf("%s: %v pixels, want %d across and %d rows", name, picture.Bounds(), want, rows)
		}
		if points := stripCaption.Size * perMM / float64(picture.Bounds().Dx()) * 277 / 25.4 * 72; points < 8.8 {
			t.Errorf("%s: on a page the captions are set in %.1f points", name, points)
		}
		tops := rowsOf(picture)
		if len(tops) != rows {
			t.Fatalf("%s: rows begin at %v, want %d of them", name, tops, rows)
		}
		tops = append(tops, picture.Bounds().Dy()+gap)
		for i, stage := range lesson.Stages[:lesson.Foldable] {
			blue, ink := 0, 0
			left, top := i%4*(side+gap), tops[i/4]
			for y := top; y < tops[i/4+1]-gap; y++ {
				for x := left; x < left+side; x++ {
					r, _, b, _ := picture.At(x, y).RGBA()
					if y < top+side && b > r+90*257 {
						blue++
					}
					if y > top+side && r < 100*257 {
						ink++
					}
				}
			}
			if (blue > 100) != (len(stage.Creases) > 0) || ink < 300 {
				t.Errorf("%s, %s: %d pixels lit, %d of letters", name, stage.Name, blue, ink)
			}
		}
	}
}

// rowsOf returns where rows of pictures begin: below a gap, which is white.
func rowsOf(picture image.Image) (tops []int) {
	white := true
	for y := range picture.Bounds().Dy() {
		r, g, b, _ := picture.At(2, y).RGBA()
		was := white
		if white = r&g&b == 0xffff; was && !white {
			tops = append(tops, y)
		}
	}
	return tops
}

func TestNothingIsWrittenOnError(t *testing.T) {
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	spec := bag.Default()
	usual := derive(t, spec, nil)
	spec.Artwork = []bag.Artwork{bag.NewArtwork("lost.png", bag.OnFaces)}
	broken := derive(t, spec, map[string][]byte{"lost.png": []byte("not a picture")})
	for _, c := range []struct {
		ctx      context.Context
		snapshot *document.Snapshot
		says     string
	}{{cancelled, usual, "context canceled"}, {context.Background(), broken, "lost.png"}} {
		var out bytes.Buffer
		moving := GIF(c.ctx, &out, Order{Snapshot: c.snapshot})
		still := Strip(c.ctx, &out, Order{Snapshot: c.snapshot})
		for _, err := range []error{moving, still} {
			if err == nil || !strings.Contains(err.Error(), c.says) || out.Len() > 0 {
				t.Errorf("error %v, %d bytes written; want one that says %q", err, out.Len(), c.says)
			}
		}
	}
}

// Titles are asked of Say, and sketches are named as such.
func TestHeadings(t *testing.T) {
	asked := map[string]bool{}
	m, err := newMaker(context.Background(), Order{Snapshot: derive(t, bag.Default(), nil), Say: func(text string) string {
		asked[text] = true
		return text
	}})
	if err != nil {
		t.Fatal(err)
	}
	for i, stage := range m.studio.Lesson.Stages {
		heading := m.heading(i)
		if !strings.Contains(heading, stage.Title.String()) || !asked[stage.Title.Format] || !asked["%d of %d: %s"] {
			t.Errorf("%s is called %q", stage.Name, heading)
		}
		if strings.Contains(heading, "(sketch)") != stage.Schematic {
			t.Errorf("%s, a sketch: %t, is called %q", stage.Name, stage.Schematic, heading)
		}
	}
}

// Titles of two lines are seen whole: below the last of them the ground is bare.
func TestLongTitlesFit(t *testing.T) {
	m, err := newMaker(context.Background(), Order{Snapshot: derive(t, bag.Default(), nil), Say: func(text string) string {
		if text == "Fold the tube" {
			return strings.Repeat("Fold the tube ", 6)
		}
		return text
	}})
	if err != nil {
		t.Fatal(err)
	}
	titles, err := m.titles()
	if err != nil {
		t.Fatal(err)
	}
	for i, title := range titles {
		if title.Rect != titles[0].Rect {
			t.Errorf("title %d takes %v, the first %v", i+1, title.Rect, titles[0].Rect)
		}
		for y := title.Rect.Max.Y - 8; y < title.Rect.Max.Y; y++ {
			for x := range title.Rect.Dx() {
				if title.RGBAAt(x, y) != ground {
					t.Fatalf("title %d reaches to its lower edge", i+1)
				}
			}
		}
	}
	if titles[0].Rect.Dy() < int(2*titleStyle.Height(1)*perMM) {
		t.Errorf("%v pixels for two lines", titles[0].Rect)
	}
}

func BenchmarkGIF(b *testing.B) {
	order := Order{Snapshot: demo(b)}
	b.ReportAllocs()
	for b.Loop() {
		b.ReportMetric(float64(len(encoded(b, order)))/1e6, "MB")
	}
}

func BenchmarkStrip(b *testing.B) {
	order := Order{Snapshot: demo(b)}
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := Strip(context.Background(), &out, order); err != nil {
			b.Fatal(err)
		}
	}
}
