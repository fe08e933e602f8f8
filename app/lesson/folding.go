package lesson

import (
	"image"
	"image/color"
	"sync"

	"gussetwright/app/foldedpane"
	"gussetwright/app/folding"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/scene"
	"gussetwright/render/solid"
)

// folder draws the bag as it is being folded. It keeps what is printed on the paper,
// and the memory of the last bag for the next.
type folder struct {
	lock    sync.Mutex
	painter *foldedpane.Painter
	model   *solid.Model
	patches []solid.Patch
	of      glueOf // what patches are for
}

// glueOf is a stage of a lesson.
type glueOf struct {
	course *course
	stage  int
}

func newFolder() *folder {
	return &folder{painter: foldedpane.NewNamingPainter(), model: &solid.Model{}}
}

// paint is part of artist.
func (f *folder) paint(o order) *image.RGBA {
	f.lock.Lock()
	defer f.lock.Unlock()
	return f.painter.Paint(o.shown(), f.view(&o))
}

// view returns what is seen, without textures.
func (f *folder) view(o *order) solid.View {
	f.model.Refold(o.course.body(o.at))
	around := o.course.box(o.at)
	v := solid.View{
		Width: o.width, Height: o.height, Samples: o.samples, Camera: o.camera, Frame: around.frame(),
		Model: f.model, Paper: solid.PaperOf(o.course.snapshot.Spec.Paper), Look: o.look, Faded: o.faded,
		Creases: o.course.creases[o.at.stage], Patches: f.glue(o), Steps: true,
	}
	v.Camera.Zoom *= min(max(v.Closest(around.least, around.greatest), 1), closest)
	return v
}

// closest bounds how much larger than from any side the bag is shown from where it
// leaves room.
const closest = 2.5

// giveBack is part of artist.
func (f *folder) giveBack(old *image.RGBA) { f.painter.GiveBack(old) }

// glue returns the areas that are glued in the stage.
func (f *folder) glue(o *order) []solid.Patch {
	if of := (glueOf{o.course, o.at.stage}); f.of != of {
		f.of, f.patches = of, f.patches[:0]
		areas, pieces := o.course.areas(o.at.stage)
		for i, area := range areas {
			patch := solid.Patch{
				Piece: pieces[i], Panel: area.Panel, Reverse: area.Side == blank.ReverseSide, Shape: corners(area.Shape), Colour: glueColour(),
			}
			for _, opening := range area.Openings {
				patch.Openings = append(patch.Openings, folding.Outline(opening))
			}
			f.patches = append(f.patches, patch)
		}
	}
	for i := range f.patches {
		f.patches[i].Strength = o.at.glued()
	}
	return f.patches
}

// glueColour is that of glue areas on the drawing.
func glueColour() color.RGBA {
	c := scene.Gluing.Style().Screen
	return color.RGBA{c.R, c.G, c.B, 255}
}

// corners returns the corners of a path of straight edges.
func corners(path geometry.Path) []geometry.Vec2 {
	list := make([]geometry.Vec2, len(path.Vertices))
	for i, v := range path.Vertices {
		list[i] = v.Vec2
	}
	return list
}
