package proof

import (
	"image"
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
)

// stage is the folded bag, ready to be looked at.
type stage struct {
	model           *solid.Model
	bare            *solid.Model  // the paper alone, without handles
	least, greatest geometry.Vec3 // of the paper
	paper           solid.Paper
	textures        []*solid.Texture
	fineness        float64 // of the textures, pixels per mm at most
	renderer        solid.Renderer
}

// Of textures: for pages, and for pictures in which small text is to be read; bounded
// for very large bags.
const (
	pageTexture   = 4.0        // pixels per mm
	finestTexture = 8.0        // pixels per mm
	mostTexture   = 16_000_000 // pixels of a piece
)

// onStage returns the folded bag with its print at the given pixels per mm, or finer. It
// is made once.
func (p *Proof) onStage(fineness float64) (*stage, error) {
	if err := p.ready(); err != nil {
		return nil, err
	}
	if p.stage == nil {
		body := fold.Standing(&p.Snapshot.Blank)
		p.stage = &stage{model: solid.NewModel(body), paper: solid.PaperOf(p.Snapshot.Spec.Paper)}
		body.Cords = nil
		p.stage.bare = solid.NewModel(body)
		p.stage.least, p.stage.greatest = body.Bounds()
	}
	if p.stage.fineness >= fineness {
		return p.stage, nil
	}
	var textures []*solid.Texture
	for i := range p.Snapshot.Blank.Pieces {
		if err := p.ctx.Err(); err != nil {
			return nil, err
		}
		textures = append(textures, p.texture(i, fineness))
	}
	p.stage.textures, p.stage.fineness = textures, fineness
	return p.stage, nil
}

// texture returns the print of a piece; nil for bare paper.
func (p *Proof) texture(i int, fineness float64) *solid.Texture {
	side, piece := p.Snapshot.Side(i), &p.Snapshot.Blank.Pieces[i]
	if side.Bare() {
		return nil
	}
	scale := min(fineness, math.Sqrt(mostTexture/(piece.Width*piece.Height)))
	return solid.NewTexture(side.Picture(piece, scale, printed.Fine), scale, piece.Height)
}

// samples along each side of a pixel: with these, edges and small text are smooth, and
// a picture of 2000 pixels takes no more than 300 MB while it is drawn.
const samples = 3

// softLook is the ground of large pictures: warm and quiet, a little darker below.
func softLook() solid.Look {
	look := solid.LightLook()
	look.Above, look.Below = color.RGBA{246, 244, 240, 255}, color.RGBA{222, 219, 213, 255}
	return look
}

// view returns a view without size.
func (s *stage) view(camera solid.Camera, look solid.Look) solid.View {
	return solid.View{
		Samples: samples, Camera: camera, Frame: s.model.Frame(solid.NoReference, 0),
		Model: s.model, Textures: s.textures, Paper: s.paper, Look: look,
	}
}

// draw returns the picture of a view. Straight from above and from below the bag is
// seen where little light comes, and white paper would look grey: there it is exposed
// for longer, and the ground stays as it is.
func (s *stage) draw(v solid.View) *image.RGBA {
	picture := s.renderer.Draw(v)
	if math.Abs(v.Camera.Elevation) < math.Pi/2 {
		return picture
	}
	v.Look.Above, v.Look.Below = color.RGBA{A: 255}, color.RGBA{A: 255}
	alone := s.renderer.Draw(v)
	expose(picture, alone)
	s.renderer.Recycle(alone)
	return picture
}

// outline returns what the bag, and whatever stands beside it, takes up of a view: mm
// in the middle of the scene, from the point that the camera looks at, y up. It is
// found from a small picture on a ground that no paper has.
func (s *stage) outline(v solid.View) geometry.Rect {
	const side = 800
	ground := color.RGBA{255, 0, 255, 255}
	v.Width, v.Height, v.Samples, v.Textures = side, side, 1, nil
	v.Camera.Zoom, v.Camera.Shift = 1, geometry.Vec2{}
	v.Look.Above, v.Look.Below, v.Look.Shadow = ground, ground, 0
	picture := s.renderer.Draw(v)
	var seen image.Rectangle
	for y := range side {
		for x := range side {
			if picture.RGBAAt(x, y) != ground {
				seen = seen.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	s.renderer.Recycle(picture)
	scale := v.Scale()
	at := func(x, y int) geometry.Vec2 {
		return geometry.Vec2{X: float64(x-side/2) / scale, Y: float64(side/2-y) / scale}
	}
	return geometry.Rect{Min: at(seen.Min.X, seen.Max.Y), Max: at(seen.Max.X, seen.Min.Y)}
}

// aim turns the camera of a view with a size so that a mm in the middle of the scene
// takes scale pixels, and the given point of the outline falls on a pixel.
func aim(v *solid.View, scale float64, point, pixel geometry.Vec2) {
	v.Camera.Zoom, v.Camera.Shift = 1, geometry.Vec2{}
	v.Camera.Zoom = scale / v.Scale()
	half := float64(min(v.Width, v.Height)) / 2
	v.Camera.Shift = geometry.Vec2{
		X: (pixel.X - float64(v.Width)/2 - scale*point.X) / half,
		Y: (float64(v.Height)/2 - scale*point.Y - pixel.Y) / half,
	}
}

// fit aims a view with a size so that an outline fills an area of it, in pixels.
func fit(v *solid.View, outline geometry.Rect, area image.Rectangle) {
	scale := min(float64(area.Dx())/outline.Width(), float64(area.Dy())/outline.Height())
	middle := geometry.Vec2{X: float64(area.Min.X+area.Max.X) / 2, Y: float64(area.Min.Y+area.Max.Y) / 2}
	aim(v, scale, outline.Center(), middle)
}

// isFlat tells whether the bag has no depth to look at from the side.
func (p *Proof) isFlat() bool { return p.Snapshot.Spec.Body.Gusset == 0 }

// hasFloor tells whether the bag has a base to look at from below.
func (p *Proof) hasFloor() bool {
	return !p.isFlat() && p.Snapshot.Spec.Body.Base != bag.BasePinch
}

// onBrown tells whether the paper colours what is printed on it.
func (p *Proof) onBrown() bool { return p.Snapshot.Spec.Paper.Colour == bag.ColourNatural }
