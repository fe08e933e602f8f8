package pdf

import (
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/report"
)

// Source: poppler, mupdf and qpdf. Of a window all that lies within is seen and nothing
// beyond; what comes after it is as it would be without, and letters stay letters.
func TestWindowsOfReports(t *testing.T) {
	line := func(y float64, colour report.Colour, dash ...float64) report.Item {
		return report.Rule{From: geometry.Vec2{X: 0, Y: y}, To: geometry.Vec2{X: 100, Y: y}, Line: report.Line{Width: 4, Colour: colour, Dash: dash}}
	}
	blueish := report.RGB(0, 0, 255)
	page := report.Page{Width: 100, Height: 100, Items: []report.Item{
		line(90, blueish),
		report.Window{Rect: geometry.RectAt(20, 20, 40, 40), Items: []report.Item{
			line(50, report.RGB(255, 0, 0), 10, 10),
			report.Picture{Rect: geometry.RectAt(0, 22, 100, 20), Form: quadrants()},
			report.Text{Text: "within", At: geometry.Vec2{X: 22, Y: 54}, Size: 4},
		}},
		line(10, blueish), // not dashed
	}}
	file := save(t, produceReport(t, []report.Page{page}, day))
	geomtest.Run(t, "qpdf", "--check", file)
	look(t, "window", file, geometry.RectAt(0, 0, 100, 100), []seen{
		{5, 90, blue},
		{95, 90, blue},
		{5, 10, blue},
		{15, 10, blue},
		{95, 10, blue},
		{5, 50, white},
		{25, 50, red},
		{35, 50, white},
		{45, 50, red},
		{65, 50, white},
		{10, 25, white},
		{22, 24, red},
		{58, 24, green},
		{62, 24, white},
		{58, 40, yellow},
	})
	if text := string(geomtest.Run(t, "pdftotext", file, "-")); !strings.Contains(text, "within") {
		t.Errorf("found %q", text)
	}
}

func TestBadWindowIsNamed(t *testing.T) {
	window := report.Window{Rect: geometry.RectAt(0, 0, 5, 5), Items: []report.Item{report.Text{Text: "x"}}}
	_, err := buildReport([]report.Page{{Width: 100, Height: 100, Items: []report.Item{window}}}, day)
	if err == nil || !strings.Contains(err.Error(), `page 1: item 1: item 1 in a window: text "x"`) {
		t.Errorf("error is %v", err)
	}
}
