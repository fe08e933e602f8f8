package report_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/pdf/object"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// flag is a picture of four pixels: red, green above blue, white.
func flag() image.Image {
	picture := image.NewRGBA(image.Rect(3, 5, 5, 7)) // its corner is not the origin
	for i, c := range []color.RGBA{{255, 0, 0, 255}, {0, 255, 0, 255}, {0, 0, 255, 255}, {255, 255, 255, 255}} {
		picture.SetRGBA(3+i%2, 5+i/2, c)
	}
	return picture
}

func TestDraw(t *testing.T) {
	page := report.Page{Width: 100, Height: 50, Items: []report.Item{
		report.Box{Rect: geometry.RectAt(10, 10, 20, 20), Radius: 5, Fill: report.RGB(0, 128, 0), Line: report.Line{Width: 1, Colour: report.RGB(0, 0, 255)}},
		report.Picture{Rect: geometry.RectAt(40, 10, 20, 20), Image: flag()},
		report.Rule{From: geometry.Vec2{X: 70, Y: 10}, To: geometry.Vec2{X: 70, Y: 40}, Line: report.Line{Width: 2, Colour: report.RGB(255, 0, 0), Dash: []float64{10, 10}}},
		report.Shape{Path: geometry.Circle(geometry.Vec2{X: 85, Y: 20}, 5), Fill: report.Ink(scene.CMYK{K: 1})},
		report.Text{Text: "I", At: geometry.Vec2{X: 90, Y: 30}, Size: 20, Bold: true, Align: scene.Middle},
	}}
	picture, err := report.Draw(page, 8)
	if err != nil {
		t.Fatal(err)
	}
	if size := picture.Bounds().Size(); size != (image.Point{X: 800, Y: 400}) {
		t.Fatalf("%v pixels", size)
	}
	for _, c := range []struct {
		what string
		x, y float64
		want color.RGBA
	}{
		{"paper", 5, 5, color.RGBA{255, 255, 255, 255}},
		{"inside of the box", 20, 20, color.RGBA{0, 128, 0, 255}},
		{"left side of the box", 10, 20, color.RGBA{0, 0, 255, 255}},
		{"round corner", 10.5, 10.5, color.RGBA{255, 255, 255, 255}},
		{"above left in the picture", 41, 29, color.RGBA{255, 0, 0, 255}},
		{"above right", 59, 29, color.RGBA{0, 255, 0, 255}},
		{"below left", 41, 11, color.RGBA{0, 0, 255, 255}},
		{"dash", 70, 15, color.RGBA{255, 0, 0, 255}},
		{"gap", 70, 25, color.RGBA{255, 255, 255, 255}},
		{"stem of the letter", 90, 37, color.RGBA{0, 0, 0, 255}},
		{"beside the letter", 95, 37, color.RGBA{255, 255, 255, 255}},
	} {
		if got := picture.RGBAAt(int(c.x*8), int((50-c.y)*8)); got != c.want {
			t.Errorf("%s is %v, want %v", c.what, got, c.want)
		}
	}
	if got := picture.RGBAAt(85*8, 30*8); got.R > 60 || got.R < 5 {
		t.Errorf("black ink is %v", got)
	}
}

func TestBadPages(t *testing.T) {
	nan := math.NaN()
	path := geometry.RectAt(0, 0, 5, 5).Path()
	form := &object.Form{Width: 1, Height: 1}
	area := geometry.RectAt(0, 0, 5, 5)
	line := report.Line{Width: 1, Colour: report.RGB(0, 0, 0)}
	with := func(change func(l *report.Line)) report.Item {
		changed := line
		change(&changed)
		return report.Shape{Path: path, Line: changed}
	}
	for _, c := range []struct {
		item report.Item
		want string
	}{
		{nil, "it is a <nil>"},
		{&report.Text{}, "it is a *report.Text"},
		{report.Text{Text: "x"}, `text "x" has the size 0 mm`},
		{report.Text{Size: 3, At: geometry.Vec2{X: nan}}, "place of a text: NaN"},
		{report.Text{Size: 3, Turn: math.Inf(1)}, "place of a text: +Inf"},
		{report.Rule{From: geometry.Vec2{Y: 1e9}, Line: line}, "path: 1e+09"},
		{report.Box{}, "a box is 0 × 0 mm"},
		{report.Box{Rect: area, Radius: nan}, "radius of a box: NaN"},
		{report.Shape{}, "no edge"},
		{report.Shape{Path: path, Fill: report.Ink(scene.CMYK{C: 1.2})}, "an ink is 1.2"},
		{report.Shape{Path: path, Fill: report.Ink(scene.CMYK{K: nan})}, "an ink is NaN"},
		{with(func(l *report.Line) { l.Width = 0 }), "a line is 0 mm wide"},
		{with(func(l *report.Line) { l.Dash = []float64{-1} }), "a dash is -1 mm"},
		{with(func(l *report.Line) { l.Dash = []float64{0, 0} }), "0 mm in all"},
		{report.Picture{Image: flag()}, "a picture is 0 × 0 mm"},
		{report.Picture{Rect: area}, "shows nothing"},
		{report.Picture{Rect: area, Image: image.NewGray(image.Rectangle{})}, "has no pixels"},
		{report.Picture{Rect: area, Form: &object.Form{Width: 1}}, "the form of a picture is 1 × 0"},
		{report.Picture{Rect: area, Image: flag(), Quality: 101}, "the quality of a picture is 101"},
		{report.Picture{Rect: area, Form: form}, "give it an image of the form as well"},
	} {
		_, err := report.Draw(report.Page{Width: 50, Height: 50, Items: []report.Item{c.item}}, 1)
		if err == nil || !strings.Contains(err.Error(), "draw page: item 1: ") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error is %v, want one with %q", err, c.want)
		}
	}
	for _, c := range []struct{ width, height, scale float64 }{{5, 50, 1}, {nan, 50, 1}, {50, 6000, 1}, {50, 50, 0}, {50, 50, 1e4}, {50, 50, nan}} {
		if _, err := report.Draw(report.Page{Width: c.width, Height: c.height}, c.scale); err == nil {
			t.Errorf("%+v: no error", c)
		}
	}
}

func TestWithin(t *testing.T) {
	area := geometry.RectAt(10, 20, 40, 10)
	wide := report.Picture{Form: &object.Form{Width: 800, Height: 100}}
	if got, want := wide.Within(area).Rect, geometry.RectAt(10, 22.5, 40, 5); got != want {
		t.Errorf("a wide form fills %v, want %v", got, want)
	}
	if got, want := (report.Picture{Image: flag()}).Within(area).Rect, geometry.RectAt(25, 20, 10, 10); got != want {
		t.Errorf("a square picture fills %v, want %v", got, want)
	}
}

// proof is a page as a client gets it.
func proof(t testing.TB) []report.Page {
	gradient := image.NewRGBA(image.Rect(0, 0, 90, 120))
	for y := range 120 {
		for x := range 90 {
			gradient.SetRGBA(x, y, color.RGBA{uint8(120 + x), uint8(160 - y), 110, 255})
		}
	}
	figure := func(caption string) report.Figure {
		return report.Figure{Picture: report.Picture{Image: gradient}, Caption: caption}
	}
	c := report.NewColumn(report.Layout{
		Accent: report.RGB(20, 90, 95), Header: "Client proof", Mark: "version 3 · 25 November 2026",
		Footer: "Colours on a screen and in this print only come near those of the press.",
	})
	c.Heading(1, "Tea house, 240 × 100 × 310 mm")
	c.Paragraph("Please look at size, paper, handle and colours, and sign below. The bag is made as it is shown here.")
	c.Pictures(80, figure("Front"), figure("Back"), figure("From above right, with the handles up and the side folded in"))
	c.Heading(2, "The bag")
	c.Rows(report.Row{Label: "Size", Value: "240 mm wide, 100 mm deep, 310 mm high"}, report.Row{Label: "Paper", Value: "natural kraft, 120 g/m²"})
	c.Heading(2, "Colours used")
	c.Swatches(report.Swatch{Colour: report.Ink(scene.CMYK{C: 0.9, M: 0.2, Y: 0.4}), Name: "Leaf", Value: "C 90 · M 20 · Y 40 · K 0"}, report.Swatch{Colour: report.Ink(scene.CMYK{M: 0.9, Y: 0.8}), Name: "Lacquer", Value: "C 0 · M 90 · Y 80 · K 0"})
	c.Heading(2, "Quantities")
	c.Table(report.Table{
		Columns: []report.TableColumn{{Title: "Part"}, {Title: "Note"}, {Title: "Number", Numbers: true}},
		Rows:    [][]string{{"Sheets 700 × 1000", "with what the press needs until it runs", "1 250"}, {"Cord", "", "2 400"}},
	})
	c.Write(report.Block{Kind: report.Tick, Text: "Approved as shown"}, report.Block{Kind: report.Tick, Text: "Approved with these changes:"})
	c.WritingLines(2)
	c.Fields("Name", "Date", "Signature")
	return pages(t, c)
}

func TestProofLooksAsBefore(t *testing.T) {
	list := proof(t)
	if len(list) != 1 {
		t.Errorf("%d pages", len(list))
	}
	picture, err := report.Draw(list[0], 4)
	if err != nil {
		t.Fatal(err)
	}
	geomtest.GoldenPicture(t, "report/proof.png", picture, 0.002)
}

func BenchmarkDraw(b *testing.B) {
	page := proof(b)[0]
	for b.Loop() {
		if _, err := report.Draw(page, 4); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleColumn() {
	c := report.NewColumn(report.Layout{Paper: report.A4(), Header: "Job sheet"})
	c.Heading(1, "Tea house")
	c.Rows(report.Row{Label: "Face", Value: "240 mm"}, report.Row{Label: "Gusset", Value: "100 mm"})
	pages, err := c.Pages()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, item := range pages[0].Items {
		if text, isText := item.(report.Text); isText {
			fmt.Println(text.Text)
		}
	}
	// Output:
	// Tea house
	// Face
	// 240 mm
	// Gusset
	// 100 mm
	// Job sheet
	// 1 / 1
}
