package press_test

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	_ "image/png" // pictures of pages
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
	"gussetwright/render/pdf"
	"gussetwright/render/press"
	"gussetwright/render/scene"
)

// quarters are the inks of the four quarters of every piece, far from each other on a
// screen: lower left, lower right, upper left, upper right.
var quarters = [4]scene.CMYK{{C: 1}, {M: 1}, {Y: 1}, {C: 1, Y: 1}}

// inQuarters prints a piece in four fields that reach out to its bleed.
func inQuarters(b *blank.Blank, piece int) []scene.Item {
	box := b.Pieces[piece].Box()
	outer, middle := box.Inset(-b.Spec.Print.Bleed), box.Center()
	var items []scene.Item
	for i, corner := range []geometry.Vec2{outer.Min, {X: outer.Max.X, Y: outer.Min.Y}, {X: outer.Min.X, Y: outer.Max.Y}, outer.Max} {
		field := geometry.Rect{Min: middle, Max: middle}.Union(geometry.Rect{Min: corner, Max: corner})
		items = append(items, scene.Fill{Role: scene.Artwork, Path: field.Path(), Ink: &quarters[i]})
	}
	return items
}

// mixed returns a form with two bags, one of them in all four turns, as a job that is
// ganged may lay them.
func mixed() press.Form {
	one, other := small(), small()
	other.Name, other.Body.Width, other.Body.Seams = "Smaller bag", 80, bag.SeamsTwo
	first, second := blank.Lay(one), blank.Lay(other)
	paper := one.Sheet
	paper.Width, paper.Height, paper.Gap = 1200, 900, 10
	at := func(b *blank.Blank, piece int, x, y float64, turn int) press.Laid {
		return press.Laid{Blank: b, Piece: piece, At: sheet.Placement{X: x, Y: y, Turn: turn}}
	}
	return press.Form{Sheet: paper, Title: "Two bags", Fibres: bag.GrainWidth, Blanks: []press.Laid{
		at(&first, 0, 20, 30, 0), at(&first, 0, 420, 30, 90), at(&first, 0, 20, 430, 180), at(&first, 0, 700, 430, 270),
		at(&second, 0, 700, 30, 0), at(&second, 1, 880, 30, 90),
	}}
}

// wanted returns the quarter of a blank that lies at a point of the sheet, worked out
// from the middle of its box alone, and false near a border or beside all blanks.
func wanted(form *press.Form, p geometry.Vec2) (int, bool) {
	for _, laid := range form.Blanks {
		box := laid.Box()
		off := p.Sub(box.Center())
		if !box.Inset(0.6).Contains(p) || math.Abs(off.X) < 0.6 || math.Abs(off.Y) < 0.6 {
			continue
		}
		if back, _ := laid.Motion().Inverse(); !laid.Blank.Pieces[laid.Piece].Outline.Contains(back.At(p)) {
			continue // beyond the slants of the seam flap
		}
		right, up := off.X > 0, off.Y > 0
		for range laid.At.Turn / 90 { // a quarter turn back: what was up is right, what was right is down
			right, up = up, !right
		}
		quarter := 0
		if right {
			quarter++
		}
		if up {
			quarter += 2
		}
		return quarter, true
	}
	return 0, false
}

// Source: poppler and MuPDF. On a sheet with two bags in four turns the quarters of
// every blank are seen where its place says, to a pixel of half a millimetre, beside its
// lines and lettering; and a sheet of paper is as large as it says.
func TestBlanksStandWhereTheyWereLaid(t *testing.T) {
	form := mixed()
	drawing := press.Draw([]press.Form{form}, "2026-03-31", inQuarters, nil)[0]
	drawing.Items = slices.DeleteFunc(drawing.Items, func(item scene.Item) bool { return item.Layer() == scene.PieceNumbers })
	var out bytes.Buffer
	if err := pdf.Write(&out, []scene.Drawing{drawing}, pdf.Info{Title: drawing.Title, Date: time.Date(2026, 3, 31, 0, 0, 0, 0, time.UTC)}); err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "sheet.pdf")
	if err := os.WriteFile(path, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	geomtest.Run(t, "qpdf", "--check", path)
	geomtest.Run(t, "pdftoppm", "-r", "50.8", "-png", "-singlefile", path, filepath.Join(folder, "poppler"))
	geomtest.Run(t, "mutool", "draw", "-q", "-r", "50.8", "-o", filepath.Join(folder, "mupdf.png"), path, "1")
	for _, reader := range []string{"poppler", "mupdf"} {
		picture := open(t, filepath.Join(folder, reader+".png"))
		// What each ink looks like is read off the middle of the quarters of the first blank.
		look := func(p geometry.Vec2) color.Color {
			return picture.At(int((p.X-drawing.Media.Min.X)*2), int((drawing.Media.Max.Y-p.Y)*2))
		}
		var inks [4]color.Color
		middle := form.Blanks[0].Box().Center()
		for i := range inks {
			inks[i] = look(middle.Add(geometry.Vec2{X: float64(i%2*2-1) * 40, Y: float64(i/2*2-1) * 25}))
		}
		wrong, looked := 0, 0
		for y := 13.25; y < 890; y += 1.5 {
			for x := 0.25; x < 1200; x += 1.5 {
				p := geometry.Vec2{X: x, Y: y}
				quarter, known := wanted(&form, p)
				if !known || nearDrawn(&form, p) {
					continue
				}
				looked++
				if nearest(look(p), inks[:]) != quarter {
					wrong++
				}
			}
		}
		if looked < 150_000 || wrong > 0 {
			t.Errorf("%s: %d of %d points show another quarter", reader, wrong, looked)
		}
		for i, laid := range form.Blanks { // half a millimetre off the middle the ink changes
			middle := laid.Box().Center()
			for _, off := range []geometry.Vec2{{X: 0.75, Y: 21}, {X: -0.75, Y: 21}, {X: 21, Y: 0.75}, {X: 21, Y: -0.75}} {
				p := middle.Add(off)
				if want, known := wanted(&form, p); known && !nearDrawn(&form, p) && nearest(look(p), inks[:]) != want {
					t.Errorf("%s: at %v of blank %d the wrong quarter is seen", reader, off, i+1)
				}
			}
		}
	}
	want := fmt.Sprintf("%.1f x %.1f mm", form.Sheet.Width, form.Sheet.Height)
	if got := fmt.Sprintf("%.1f x %.1f mm", drawing.Trim.Width(), drawing.Trim.Height()); got != want {
		t.Errorf("the trim box is %s, want %s", got, want)
	}
}

// nearDrawn tells whether a line of a blank runs by within a millimetre.
func nearDrawn(form *press.Form, p geometry.Vec2) bool {
	for _, laid := range form.Blanks {
		if !laid.Box().Inset(-2).Contains(p) {
			continue
		}
		back, _ := laid.Motion().Inverse()
		own := back.At(p)
		piece := &laid.Blank.Pieces[laid.Piece]
		for _, line := range piece.Lines {
			if toLine(own, line.Edge) < 1.2 {
				return true
			}
		}
		for _, hole := range piece.Holes {
			if math.Abs(hole.Center.Sub(own).Length()-hole.Diameter/2) < 1.2 {
				return true
			}
		}
		var outlines []geometry.Path
		for _, area := range piece.GluedTurnIns(laid.Blank.Spec) {
			outlines = append(outlines, area.Box.Path())
		}
		for _, glue := range piece.Glue {
			outlines = append(outlines, glue.Shape)
		}
		for _, outline := range outlines {
			for i := range outline.Len() {
				if toLine(own, outline.Edge(i)) < 2.2 { // drawn a millimetre inward
					return true
				}
			}
		}
	}
	return false
}

func toLine(p geometry.Vec2, edge geometry.Edge) float64 {
	along := edge.To.Sub(edge.From)
	share := max(0, min(1, p.Sub(edge.From).Dot(along)/along.Dot(along)))
	return p.Sub(edge.From.Add(along.Scale(share))).Length()
}

// nearest returns which of the colours a colour is closest to.
func nearest(c color.Color, colours []color.Color) int {
	best, least := 0, math.Inf(1)
	r, g, b, _ := c.RGBA()
	for i, other := range colours {
		r2, g2, b2, _ := other.RGBA()
		d := math.Hypot(math.Hypot(float64(r)-float64(r2), float64(g)-float64(g2)), float64(b)-float64(b2))
		if d < least {
			best, least = i, d
		}
	}
	return best
}

func open(t *testing.T, path string) image.Image {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	picture, _, err := image.Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}
