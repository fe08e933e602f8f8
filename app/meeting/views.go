package meeting

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/foldedpane"
	"gussetwright/geometry"
	"gussetwright/render/solid"
)

// first is from where the bags are seen at first.
var first = solid.Isometric

// views returns the few places to look from that a client asks for.
func views() []foldedpane.NamedView {
	return []foldedpane.NamedView{
		{Name: lang.L("From a corner"), Camera: first},
		{Name: lang.L("From the front"), Camera: solid.Front},
		{Name: lang.L("From the side"), Camera: solid.Right},
		{Name: lang.L("From the back"), Camera: solid.Back},
		{Name: lang.L("From above"), Camera: solid.Top},
	}
}

// viewName names the place from which a camera looks.
func viewName(camera solid.Camera) string {
	for _, v := range views() {
		if seen := v.Camera.Limited(); seen.Azimuth == camera.Azimuth && seen.Elevation == camera.Elevation {
			return v.Name
		}
	}
	return lang.L("Turned")
}

// How far one step of a wheel or a key zooms, and what the toolkit reports for a step of a
// wheel. The bags are seen from half as large as they fit to far too large.
const (
	zoomStep  = 1.2
	wheelStep = 25
	leastZoom = 0.5
	mostZoom  = 8
)

// Scrolled is part of fyne.Scrollable: the wheel zooms, where one bag has all of the stage
// at the pointer.
func (s *stage) Scrolled(ev *fyne.ScrollEvent) {
	const most = 4 // steps at once
	factor := math.Pow(zoomStep, min(max(float64(ev.Scrolled.DY)/wheelStep, -most), most))
	if s.several {
		s.zoom(factor)
		return
	}
	s.zoomAt(ev.Position, factor)
}

// zoom makes the bags that many times as large about their middles.
func (s *stage) zoom(factor float64) {
	size := s.Size()
	s.zoomAt(fyne.NewPos(size.Width/2, size.Height/2), factor)
}

// zoomAt makes the bags that many times as large; what lies at a position of the stage
// stays there, where one bag has all of it.
func (s *stage) zoomAt(pos fyne.Position, factor float64) {
	size, unit := s.Size(), halfOf(s.Size())
	at := geometry.Vec2{X: float64(pos.X-size.Width/2) / unit, Y: float64(size.Height/2-pos.Y) / unit}
	camera := s.camera
	camera.Zoom = min(max(camera.Zoom*factor, leastZoom), mostZoom)
	camera.Shift = at.Add(camera.Shift.Sub(at).Scale(camera.Zoom / s.camera.Zoom))
	s.turn(camera)
}

// halfOf returns half the lesser side.
func halfOf(size fyne.Size) float64 { return max(float64(min(size.Width, size.Height))/2, 1) }
