package report_test

import (
	"image/color"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/report"
)

func TestWindow(t *testing.T) {
	red, blue := report.RGB(255, 0, 0), report.RGB(0, 0, 255)
	page := report.Page{Width: 60, Height: 40, Items: []report.Item{
		report.Box{Rect: geometry.RectAt(0, 0, 60, 40), Fill: report.RGB(0, 128, 0)},
		report.Window{Rect: geometry.RectAt(10, 10, 20, 20), Items: []report.Item{
			report.Rule{From: geometry.Vec2{X: -20, Y: 20}, To: geometry.Vec2{X: 90, Y: 20}, Line: report.Line{Width: 4, Colour: red}},
			report.Window{Rect: geometry.RectAt(25, 0, 20, 40), Items: []report.Item{
				report.Box{Rect: geometry.RectAt(0, 24, 60, 4), Fill: blue},
			}},
		}},
		report.Box{Rect: geometry.RectAt(50, 30, 5, 5), Fill: blue},
	}}
	picture, err := report.Draw(page, 4)
	if err != nil {
		t.Fatal(err)
	}
	green := color.RGBA{0, 128, 0, 255}
	for _, c := range []struct {
		what string
		x, y float64
		want color.RGBA
	}{
		{"line in the window", 20, 20, color.RGBA{255, 0, 0, 255}},
		{"left of it", 9, 20, green},
		{"right of it", 31, 20, green},
		{"beside the line", 20, 15, green},
		{"in the window within", 27, 26, color.RGBA{0, 0, 255, 255}},
		{"in the outer one alone", 20, 26, green},
		{"in the inner one alone", 35, 26, green},
		{"after it", 52, 32, color.RGBA{0, 0, 255, 255}},
	} {
		if got := picture.RGBAAt(int(c.x*4), int((40-c.y)*4)); got != c.want {
			t.Errorf("%s is %v, want %v", c.what, got, c.want)
		}
	}
}

func TestBadWindows(t *testing.T) {
	area := geometry.RectAt(0, 0, 5, 5)
	for _, c := range []struct {
		window report.Window
		want   string
	}{
		{report.Window{}, "a window is 0 × 0 mm"},
		{report.Window{Rect: geometry.RectAt(0, math.Inf(1), 5, 5)}, "a window is"},
		{report.Window{Rect: area, Items: []report.Item{report.Rule{}, report.Text{Text: "x"}}}, `item 2 in a window: text "x"`},
		{report.Window{Rect: area, Items: []report.Item{report.Window{Rect: area, Items: []report.Item{nil}}}}, "item 1 in a window: item 1 in a window: it is a <nil>"},
		{report.Window{Rect: area, Items: []report.Item{report.Picture{Rect: area}}}, "a picture shows nothing"},
	} {
		_, err := report.Draw(report.Page{Width: 50, Height: 50, Items: []report.Item{c.window}}, 1)
		if err == nil || !strings.Contains(err.Error(), "draw page: item 1: ") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error is %v, want one with %q", err, c.want)
		}
	}
}
