package solid_test

import (
	"image"
	"image/color"
	"maps"
	"math"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// viewOf returns a fine isometric view of a bag, with the names of the panels that
// show at scale pixels per mm.
func viewOf(spec bag.Spec, scale float64) solid.View {
	laid := blank.Lay(spec)
	v := solid.View{
		Width: 900, Height: 700, Samples: 2, Camera: solid.Isometric,
		Look: solid.LightLook(), Paper: solid.PaperOf(spec.Paper), Model: solid.NewModel(fold.Standing(&laid)),
	}
	names := map[string]string{"front": "Front", "back": "Back", "gusset-left": "Left", "gusset-right": "Right"}
	for i := range laid.Pieces {
		v.Textures = append(v.Textures, solid.Sample(&laid.Pieces[i], v.Paper, v.Look.Ink, scale, func(p string) string { return names[p] }))
	}
	return v
}

// styles returns bags of every construction.
func styles(t testing.TB) map[string]bag.Spec {
	list := map[string]bag.Spec{}
	add := func(name string, change func(*bag.Spec)) {
		spec := geomtest.WorkedExample()
		change(&spec)
		if err := spec.Validate(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		list[name] = spec
	}
	add("block", func(*bag.Spec) {})
	add("slotted", func(s *bag.Spec) { s.Body.Base, s.Body.SlotWidth = bag.BaseSlotted, 4 })
	add("two-seams", func(s *bag.Spec) {
		s.Body.Seams, s.Handle.Kind, s.Handle.Eyelets = bag.SeamsTwo, bag.HandleRibbon, true
	})
	add("tape", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTape })
	add("hand-hole", func(s *bag.Spec) { s.Handle.Kind, s.Body.TurnIn, s.Handle.Drop = bag.HandleHandHole, 80, 45 })
	add("zigzag", func(s *bag.Spec) {
		s.Body.Top, s.Handle.Kind, s.Paper.Kind = bag.TopZigzag, bag.HandleTwisted, bag.PaperKraft
		s.Paper.Colour = bag.ColourNatural
	})
	add("pinch", func(s *bag.Spec) { s.Body.Base = bag.BasePinch })
	add("flat", func(s *bag.Spec) { s.Body.Base, s.Body.Gusset = bag.BasePinch, 0 })
	return list
}

// names returns the names of the styles in a fixed order.
func names(styles map[string]bag.Spec) []string { return slices.Sorted(maps.Keys(styles)) }

// hues are far apart, so that a pixel tells its panel whatever the light.
var hues = []color.RGBA{
	{255, 0, 0, 255},
	{0, 255, 0, 255},
	{0, 0, 255, 255},
	{255, 255, 0, 255},
	{255, 0, 255, 255},
	{0, 255, 255, 255},
	{255, 128, 0, 255},
	{0, 255, 128, 255},
	{128, 0, 255, 255},
	{128, 255, 0, 255},
	{0, 128, 255, 255},
	{255, 0, 128, 255},
}

// tinted returns a view in which each panel has a hue of its own, or shares it with
// few, and the reverse is white; and the hue of each panel.
func tinted(spec bag.Spec) (solid.View, map[string]color.RGBA) {
	spec.Handle.Kind = handless(spec.Handle.Kind)
	spec.Cards.Base = false
	laid := blank.Lay(spec)
	v := viewOf(spec, 1)
	v.Samples, v.Width, v.Height, v.Textures = 1, 300, 300, nil
	v.Look.Ink = color.RGBA{} // black edges: no hue
	v.Look.Above, v.Look.Below, v.Look.Shadow = color.RGBA{60, 60, 60, 255}, color.RGBA{60, 60, 60, 255}, 0
	v.Paper = solid.Paper{Print: color.RGBA{255, 255, 255, 255}, Reverse: color.RGBA{255, 255, 255, 255}}
	of := map[string]color.RGBA{}
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		const scale = 2
		picture := image.NewRGBA(image.Rect(0, 0, int(piece.Width*scale), int(piece.Height*scale)))
		for _, panel := range piece.Panels {
			hue, known := of[panel.ID]
			if !known {
				hue = hues[len(of)%len(hues)]
				of[panel.ID] = hue
			}
			box := panel.Box
			for y := int((piece.Height - box.Max.Y) * scale); y < int((piece.Height-box.Min.Y)*scale); y++ {
				for x := int(box.Min.X * scale); x < int(box.Max.X*scale); x++ {
					picture.SetRGBA(x, y, hue)
				}
			}
		}
		v.Textures = append(v.Textures, solid.NewTexture(picture, scale, piece.Height))
	}
	return v, of
}

// handless keeps holes and takes handles away, which would hide the paper.
func handless(kind bag.HandleKind) bag.HandleKind {
	if kind == bag.HandleHandHole {
		return kind
	}
	return bag.HandleNone
}

// alike tells whether a pixel is a shade of a colour.
func alike(pixel, of color.RGBA) bool {
	dot := func(a, b color.RGBA) float64 {
		return float64(a.R)*float64(b.R) + float64(a.G)*float64(b.G) + float64(a.B)*float64(b.B)
	}
	return dot(pixel, of) >= 0.995*math.Sqrt(dot(pixel, pixel)*dot(of, of))
}

func at(x, y float64) geometry.Vec2 { return geometry.Vec2{X: x, Y: y} }
