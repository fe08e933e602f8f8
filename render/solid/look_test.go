package solid_test

import (
	"image"
	"image/draw"
	"image/png"
	"os"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func viewOf(spec bag.Spec, scale float64) solid.View {
	laid := blank.Lay(spec)
	v := solid.View{Width: 900, Height: 700, Samples: 2, Camera: solid.Isometric, Look: solid.LightLook(), Paper: solid.PaperOf(spec.Paper.Kind)}
	v.Model = solid.NewModel(fold.Standing(&laid))
	for i := range laid.Pieces {
		v.Textures = append(v.Textures, solid.Sample(&laid.Pieces[i], v.Paper, v.Look.Ink, scale, func(p string) string { return p }))
	}
	return v
}

func TestLook(t *testing.T) {
	out := os.Getenv("LOOK")
	if out == "" {
		t.Skip()
	}
	var r solid.Renderer
	save := func(name string, img image.Image) {
		f, _ := os.Create(out + "/" + name + ".png")
		png.Encode(f, img)
		f.Close()
	}
	grid := func(name string, views ...solid.View) {
		const w, h = 640, 500
		n := len(views)
		cols := 3
		sheet := image.NewRGBA(image.Rect(0, 0, cols*w, (n+cols-1)/cols*h))
		for i, v := range views {
			v.Width, v.Height = w, h
			draw.Draw(sheet, image.Rect(i%cols*w, i/cols*h, i%cols*w+w, i/cols*h+h), r.Draw(v), image.Point{}, draw.Src)
		}
		save(name, sheet)
	}
	spec := geomtest.WorkedExample()
	spec.Body.SeamRelief = 0.5
	v := viewOf(spec, 2)
	save("iso", r.Draw(v))
	var views []solid.View
	for _, c := range []solid.Camera{solid.Front, solid.Back, solid.Left, solid.Right, solid.Top, solid.Below, {Azimuth: 3, Elevation: 0.5, Zoom: 1.5}, {Azimuth: 0.5, Elevation: -0.6, Zoom: 1.4}, {Azimuth: -0.6, Elevation: 0.9, Zoom: 2}} {
		v.Camera = c
		views = append(views, v)
	}
	grid("views", views...)
	views = nil
	add := func(change func(*bag.Spec), more ...func(*solid.View)) {
		s := spec
		change(&s)
		if err := s.Validate(); err != nil {
			t.Fatal(err)
		}
		v := viewOf(s, 2)
		for _, m := range more {
			m(&v)
		}
		views = append(views, v)
	}
	add(func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted }, func(v *solid.View) { v.Camera = solid.Camera{Azimuth: 0.4, Elevation: -0.7, Zoom: 1.3} })
	add(func(s *bag.Spec) { s.Body.Base = bag.BasePinch })
	add(func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, func(v *solid.View) { v.Camera = solid.Camera{Azimuth: 2.4, Elevation: 0.3, Zoom: 1} })
	add(func(s *bag.Spec) {
		s.Body.Top = bag.TopZigzag
		s.Handle.Kind = bag.HandleTwisted
		s.Paper.Kind = bag.PaperKraft
	})
	add(func(s *bag.Spec) {
		s.Body.Top = bag.TopStraight
		s.Handle.Kind = bag.HandleStrip
		s.Paper.Kind = bag.PaperKraft
		s.Body.Seams = bag.SeamsTwo
	})
	add(func(s *bag.Spec) { s.Handle.Kind = bag.HandleHandHole; s.Body.TurnIn = 80; s.Handle.Drop = 45 })
	add(func(s *bag.Spec) { s.Body.Base, s.Body.Gusset = bag.BasePinch, 0 })
	add(func(s *bag.Spec) { s.Handle.Kind = bag.HandleRibbon }, func(v *solid.View) { v.Look = solid.DarkLook(); v.Reference = solid.SheetA4 })
	add(func(s *bag.Spec) { s.Handle.Eyelets = true }, func(v *solid.View) { v.Look = solid.DarkLook(); v.Reference = solid.Hand; v.Highlight = "front" })
	add(func(s *bag.Spec) {}, func(v *solid.View) {
		v.Reference = solid.Can33
		v.Highlight = "gusset-left"
		v.Marker = &solid.Place{0, geometryVec(180, 405)}
	})
	add(func(s *bag.Spec) { s.Body.Height, s.Body.Width, s.Body.Gusset = 120, 300, 200 }, func(v *solid.View) { v.Reference = solid.Hand })
	add(func(s *bag.Spec) {
		s.Handle.Kind = bag.HandleNone
		s.Body.Height, s.Body.Width, s.Body.Gusset = 380, 100, 90
	}, func(v *solid.View) { v.Faded = true })
	grid("styles", views...)
	views = nil
	zoom := func(c solid.Camera) func(*solid.View) { return func(v *solid.View) { v.Camera = c } }
	add(func(s *bag.Spec) {}, zoom(solid.Camera{Azimuth: .7, Elevation: .6, Zoom: 7, Shift: geometryVec(2, -1)}))
	add(func(s *bag.Spec) { s.Handle.Eyelets = true }, zoom(solid.Camera{Azimuth: .7, Elevation: .6, Zoom: 8, Shift: geometryVec(1.1, -0.9)}))
	add(func(s *bag.Spec) {}, zoom(solid.Camera{Azimuth: .7, Elevation: .6, Zoom: 12, Shift: geometryVec(-1.9, -1.6)}))
	add(func(s *bag.Spec) {}, zoom(solid.Camera{Azimuth: .7, Elevation: .6, Zoom: 12, Shift: geometryVec(4.5, -3)}))
	add(func(s *bag.Spec) {}, zoom(solid.Camera{Azimuth: .5, Elevation: -1, Zoom: 2.2, Shift: geometryVec(0, 1.1)}))
	add(func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted; s.Body.SlotWidth = 4 }, zoom(solid.Camera{Azimuth: .5, Elevation: -1, Zoom: 2.2, Shift: geometryVec(0, 1.1)}))
	add(func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, zoom(solid.Camera{Azimuth: 2.2, Elevation: -0.1, Zoom: 7, Shift: geometryVec(0, 4)}))
	add(func(s *bag.Spec) { s.Body.Base = bag.BasePinch }, zoom(solid.Camera{Azimuth: .6, Elevation: .8, Zoom: 3, Shift: geometryVec(0, 0)}))
	add(func(s *bag.Spec) { s.Handle.Kind = bag.HandleTwisted; s.Body.Top = bag.TopZigzag }, zoom(solid.Camera{Azimuth: .6, Elevation: .6, Zoom: 3, Shift: geometryVec(0, 0)}))
	add(func(s *bag.Spec) { s.Handle.Kind = bag.HandleStrip; s.Body.Top = bag.TopStraight }, zoom(solid.Camera{Azimuth: .6, Elevation: .6, Zoom: 3, Shift: geometryVec(0, -1.5)}))
	add(func(s *bag.Spec) { s.Body.Base, s.Body.Gusset = bag.BasePinch, 0 }, zoom(solid.Camera{Azimuth: .6, Elevation: .6, Zoom: 10, Shift: geometryVec(3, -1.5)}))
	add(func(s *bag.Spec) {}, func(v *solid.View) {
		v.Reference = solid.Can33
		v.Camera = solid.Camera{Azimuth: .6, Elevation: .4, Zoom: 4, Shift: geometryVec(1.6, 1.4)}
	})
	add(func(s *bag.Spec) {}, func(v *solid.View) {
		v.Reference = solid.Hand
		v.Camera = solid.Camera{Azimuth: .2, Elevation: .2, Zoom: 4, Shift: geometryVec(1.6, 1.4)}
	})
	add(func(s *bag.Spec) {}, func(v *solid.View) {
		v.Reference = solid.SheetA4
		v.Camera = solid.Camera{Azimuth: .2, Elevation: .2, Zoom: 2, Shift: geometryVec(1, .4)}
	})
	add(func(s *bag.Spec) {}, func(v *solid.View) { v.Camera = solid.Top })
	grid("close", views...)
	v = viewOf(spec, 2)
	v.Camera = solid.Camera{Azimuth: .5, Elevation: -1, Zoom: 3, Shift: geometryVec(0, 1.5)}
	save("base", r.Draw(v))
	spec.Body.Base = bag.BasePinch
	v = viewOf(spec, 2)
	v.Camera = solid.Camera{Azimuth: 2.2, Elevation: 0.1, Zoom: 5, Shift: geometryVec(0, 4)}
	save("pinchbase", r.Draw(v))
}
