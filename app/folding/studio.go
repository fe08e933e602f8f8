package folding

import (
	"context"
	"image"
	"image/color"
	"math"
	"slices"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/packing"
	"gussetwright/geometry/phrase"
	"gussetwright/render/dieline"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
)

// Studio takes pictures of one bag. It belongs to one goroutine.
type Studio struct {
	Lesson *fold.Lesson

	laid     *blank.Blank
	textures []*solid.Texture
	paper    solid.Paper
	creases  []solid.Crease // all of them
	frame    solid.Frame    // around all moments
	sights   []Sight        // by stage
	scopes   []scope        // by stage
	model    *solid.Model
	renderer solid.Renderer
}

// Of the print on the paper.
const (
	textureScale = 3.0 // pixels per mm
	mostTexture  = 8_000_000
)

// New folds the bag of a snapshot. say puts the names of panels into the language of
// the reader. Artwork that cannot be shown is an error, as is the end of ctx.
func New(ctx context.Context, snapshot *document.Snapshot, say func(english string) string) (*Studio, error) {
	if err := snapshot.ArtError(); err != nil {
		return nil, err
	}
	if snapshot.Opening() {
		return nil, phrase.Errorf("the artwork is still being opened; wait a moment and try again")
	}
	laid := &snapshot.Blank
	s := &Studio{Lesson: packing.Lesson(laid), laid: laid, paper: solid.PaperOf(snapshot.Spec.Paper), model: &solid.Model{}}
	for i := range laid.Pieces {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		s.textures = append(s.textures, s.texture(snapshot, i, say))
		for _, line := range laid.Pieces[i].Lines {
			if line.Kind == blank.Crease {
				s.creases = append(s.creases, solid.Crease{Piece: i, Edge: line.Edge})
			}
		}
	}
	return s, s.look(ctx)
}

// texture returns the print of a piece, or plain paper with the names of its panels.
func (s *Studio) texture(snapshot *document.Snapshot, i int, say func(string) string) *solid.Texture {
	side, piece := snapshot.Side(i), &snapshot.Blank.Pieces[i]
	scale := min(textureScale, math.Sqrt(mostTexture/(piece.Width*piece.Height)))
	if !side.Bare() {
		return solid.NewTexture(side.Picture(piece, scale, printed.Fine), scale, piece.Height)
	}
	return solid.Sample(piece, s.paper, solid.LightLook().Ink, scale, func(id string) string {
		if panel, _ := piece.Panel(id); panel.Row != blank.RowBody || panel.Column == "seam-flap" {
			return ""
		}
		return say(dieline.PanelName(id))
	})
}

// Shot is a picture to be taken.
type Shot struct {
	Stage         int
	Moment        float64 // 0 at the beginning of the stage, 1 at its end
	Width, Height int     // pixels
	Samples       int     // along each side of a pixel, see solid.View
	Lit           bool    // the creases that are folded in the stage stand out
	Glue          bool    // what is glued in the stage is striped
	Ground        color.RGBA
	// Close takes in the moment alone, not all that the stage moves through.
	Close bool
	// Back is how far the view is still that of the stage before, from 0 for not at all
	// to 1 for quite.
	Back float64
}

// Take takes a picture. It is the caller's until it is given back with GiveBack.
func (s *Studio) Take(shot Shot) *image.RGBA {
	body := s.Lesson.Pose(shot.Stage, shot.Moment)
	from, at := s.sights[shot.Stage].Camera, s.scopes[shot.Stage]
	switch {
	case shot.Close:
		at = s.around(shot.Stage, body)
	case shot.Back > 0 && shot.Stage > 0:
		from = Toward(from, s.sights[shot.Stage-1].Camera, shot.Back)
		at = at.toward(s.scopes[shot.Stage-1], shot.Back)
	}
	s.model.Refold(body)
	v := s.view(from)
	v.Width, v.Height, v.Samples = shot.Width, shot.Height, shot.Samples
	v.Look.Above, v.Look.Below = shot.Ground, shot.Ground
	v.Textures, v.Creases = s.textures, s.creases
	if shot.Lit {
		v.Creases = s.lit(shot.Stage)
	}
	if shot.Glue {
		v.Patches = s.glue(shot.Stage)
	}
	at.aim(&v)
	return s.renderer.Draw(v)
}

// GiveBack takes a picture that is needed no longer, to be drawn over.
func (s *Studio) GiveBack(picture *image.RGBA) { s.renderer.Recycle(picture) }

// usual sees the table from the front right: the edge that is toward whoever folds is
// in front.
var usual = solid.Camera{Azimuth: 0.6, Elevation: 0.55, Zoom: 1}

func (s *Studio) view(from solid.Camera) solid.View {
	look := solid.LightLook()
	look.Shadow = 0.35
	return solid.View{Camera: from, Frame: s.frame, Model: s.model, Paper: s.paper, Look: look, Steps: true}
}

// lit returns the creases, those lit that a stage folds.
func (s *Studio) lit(stage int) []solid.Crease {
	list := slices.Clone(s.creases)
	for _, c := range s.Lesson.Stages[stage].Creases {
		list = append(list, solid.Crease{Piece: c.Piece, Edge: c.Edge, Lit: true})
	}
	return list
}

// glueColour is that of warm glue, our own choice.
var glueColour = color.RGBA{214, 140, 0, 255}

// glue returns what is glued in a stage.
func (s *Studio) glue(stage int) []solid.Patch {
	var patches []solid.Patch
	for i := range s.laid.Pieces {
		for _, area := range s.laid.Pieces[i].Glue {
			for _, role := range s.Lesson.Stages[stage].Glue {
				if area.Role != role {
					continue
				}
				patch := solid.Patch{Piece: i, Panel: area.Panel, Reverse: area.Side == blank.ReverseSide, Colour: glueColour, Strength: 0.8}
				for _, v := range area.Shape.Vertices {
					patch.Shape = append(patch.Shape, v.Vec2)
				}
				for _, opening := range area.Openings {
					patch.Openings = append(patch.Openings, Outline(opening))
				}
				patches = append(patches, patch)
			}
		}
	}
	return patches
}

// Outline returns a closed path as a polygon.
func Outline(path geometry.Path) []geometry.Vec2 {
	const chords = 8 // of an arc
	var list []geometry.Vec2
	for i := range path.Len() {
		edge := path.Edge(i)
		list = append(list, edge.From)
		if edge.Bulge == 0 {
			continue
		}
		arc := edge.Arc()
		for k := 1; k < chords; k++ {
			sin, cos := math.Sincos(arc.Start + arc.Sweep*float64(k)/chords)
			list = append(list, arc.Center.Add(geometry.Vec2{X: cos, Y: sin}.Scale(arc.Radius)))
		}
	}
	return list
}
