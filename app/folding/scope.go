package folding

import (
	"context"
	"image"
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
)

// scope is what a view takes in: mm in the middle of the scene, from the point that the
// camera looks at, y up.
type scope struct{ geometry.Rect }

// Of scopes: moments of a stage that are looked at, pixels of the picture in which the
// paper is looked for, and what is left free around it as a share of the picture.
const (
	looks   = 5
	probe   = 360
	leftOut = 0.05
)

// look finds what is seen in each stage.
func (s *Studio) look(ctx context.Context) error {
	l := s.Lesson
	var least, greatest geometry.Vec3
	for stage := range l.Stages {
		for k := range looks {
			body := l.Pose(stage, float64(k)/(looks-1))
			low, high := body.Bounds()
			if stage+k == 0 {
				least, greatest = low, high
			}
			least = geometry.Vec3{X: min(least.X, low.X), Y: min(least.Y, low.Y), Z: min(least.Z, low.Z)}
			greatest = geometry.Vec3{X: max(greatest.X, high.X), Y: max(greatest.Y, high.Y), Z: max(greatest.Z, high.Z)}
		}
	}
	across := geometry.Vec2{X: greatest.X - least.X, Y: greatest.Y - least.Y}
	s.frame = solid.Frame{Middle: least.Mid(greatest), Radius: across.Length() / 2, Rise: (greatest.Z - least.Z) / 2}
	for stage := range l.Stages {
		if err := ctx.Err(); err != nil {
			return err
		}
		s.sights = append(s.sights, SightOf(s.laid, &l.Stages[stage], usual))
		seen := s.around(stage, l.Pose(stage, 0))
		for k := 1; k < looks; k++ {
			seen = scope{seen.Union(s.around(stage, l.Pose(stage, float64(k)/(looks-1))).Rect)}
		}
		s.scopes = append(s.scopes, seen)
	}
	return nil
}

// around returns what is to be seen of a body in a stage.
func (s *Studio) around(stage int, body fold.Body) scope {
	sight := s.sights[stage]
	s.model.Refold(body)
	v := s.view(sight.Camera)
	v.Width, v.Height, v.Samples = probe, probe, 1
	if sight.Near {
		return scope{v.Span(Part(&body))}
	}
	return scope{s.outline(v)}
}

// outline returns what the body takes up of a view. It is found from a small picture on a
// ground that no paper has.
func (s *Studio) outline(v solid.View) geometry.Rect {
	ground := color.RGBA{255, 0, 255, 255}
	v.Look.Above, v.Look.Below, v.Look.Shadow = ground, ground, 0
	picture := s.renderer.Draw(v)
	defer s.renderer.Recycle(picture)
	var seen image.Rectangle
	for y := range probe {
		for x := range probe {
			if picture.RGBAAt(x, y) != ground {
				seen = seen.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	scale := v.Scale()
	at := func(x, y int) geometry.Vec2 {
		return geometry.Vec2{X: float64(x-probe/2) / scale, Y: float64(probe/2-y) / scale}
	}
	return geometry.Rect{Min: at(seen.Min.X, seen.Max.Y), Max: at(seen.Max.X, seen.Min.Y)}
}

// toward returns what lies the share part of the way to another scope: sizes grow by
// equal factors in equal parts.
func (s scope) toward(other scope, part float64) scope {
	mix := func(a, b float64) float64 { return math.Exp(math.Log(a)*(1-part) + math.Log(b)*part) }
	middle := s.Center().Add(other.Center().Sub(s.Center()).Scale(part))
	width, height := mix(s.Width(), other.Width()), mix(s.Height(), other.Height())
	return scope{geometry.RectAt(middle.X-width/2, middle.Y-height/2, width, height)}
}

// aim turns the camera of a view with a size so that the scope fills it.
func (s scope) aim(v *solid.View) {
	width, height := float64(v.Width), float64(v.Height)
	scale := (1 - 2*leftOut) * min(width/s.Width(), height/s.Height())
	v.Camera.Zoom = scale / v.Scale()
	half := min(width, height) / 2
	v.Camera.Shift = s.Center().Scale(-scale / half)
}
