package artcheck

import (
	"context"
	"image"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/flat"
	"gussetwright/render/printed"
)

// scale is how finely the print side is looked at, in pixels to the mm.
const scale = 2.0

// Look returns what only the pixels tell: ink where glue must hold, and text or marks
// that come too near to a crease, an edge or a hole. sides are the print sides of the
// pieces on white paper. It takes some tens of milliseconds and ends early, with
// nothing, when ctx ends.
func Look(ctx context.Context, b *blank.Blank, placed []placement.Placed, sides []*printed.Side) []check.Finding {
	look := inspection{blank: b, spec: &b.Spec, placed: placed}
	for i, side := range sides {
		if side.Bare() {
			continue
		}
		if ctx.Err() != nil {
			return nil
		}
		ground := newGround(b, i, side)
		look.inkInGlue(ground)
		look.marks(ctx, ground)
	}
	if ctx.Err() != nil {
		return nil
	}
	return look.findings
}

// ground is the picture of the print side of a piece with its bleed.
type ground struct {
	index   int
	piece   *blank.Piece
	picture *image.RGBA
	view    flat.View
}

func newGround(b *blank.Blank, index int, side *printed.Side) *ground {
	piece := &b.Pieces[index]
	bleed := b.Spec.Print.Bleed
	box := piece.Box().Inset(-bleed)
	g := &ground{
		index: index, piece: piece,
		picture: image.NewRGBA(image.Rect(0, 0, int(box.Width()*scale+0.5), int(box.Height()*scale+0.5))),
		view:    flat.View{Scale: scale, Origin: geometry.Vec2{X: box.Min.X, Y: box.Max.Y}},
	}
	for i := range g.picture.Pix {
		g.picture.Pix[i] = 255
	}
	side.Paint(&printed.Bench{}, g.picture, g.view, printed.Fine)
	return g
}

// at returns the point of the blank in the middle of a pixel.
func (g *ground) at(x, y int) geometry.Vec2 {
	return geometry.Vec2{X: g.view.Origin.X + (float64(x)+0.5)/scale, Y: g.view.Origin.Y - (float64(y)+0.5)/scale}
}

// pixels returns the pixels whose middle lies in a rectangle of the blank.
func (g *ground) pixels(r geometry.Rect) image.Rectangle {
	left, top := g.view.At(geometry.Vec2{X: r.Min.X, Y: r.Max.Y})
	right, bottom := g.view.At(geometry.Vec2{X: r.Max.X, Y: r.Min.Y})
	return image.Rect(int(left+0.5), int(top+0.5), int(right+0.5), int(bottom+0.5)).Intersect(g.picture.Rect)
}

// Ink is told from bare paper by this much of 255, which leaves out the noise of
// compressed pictures; glue areas are looked at a little inside their edges, and a
// speck is forgiven.
const (
	leastInk   = 12
	insideGlue = 1.0  // mm
	speck      = 0.02 // share of the area
)

// inkInGlue looks for ink in the areas that glue must find bare.
func (l *inspection) inkInGlue(g *ground) {
	for _, area := range placement.InkFree(g.piece, *l.spec) {
		inner := area.Offset(-insideGlue)
		inked, all := 0, 0
		var sum geometry.Vec2
		for _, p := range g.inside(inner) {
			all++
			if g.inked(p.X, p.Y) {
				inked++
				sum = sum.Add(g.at(p.X, p.Y))
			}
		}
		if all == 0 || float64(inked) < speck*float64(all) {
			continue
		}
		l.find(check.Error, "ink-in-glue", g.index, sum.Scale(1/float64(inked)),
			phrase.New("ink covers %d%% of a glue area; glue holds on bare paper only", max(100*inked/all, 1)),
			phrase.New("leave the glue areas white in the artwork; the template shows them"))
	}
}

// inside returns the pixels within a convex path of straight edges that are on the
// paper.
func (g *ground) inside(path geometry.Path) []image.Point {
	if len(path.Vertices) == 0 {
		return nil
	}
	sides := make([]line, path.Len())
	for i := range sides {
		edge := path.Edge(i)
		sides[i] = line{edge.From, edge.To.Sub(edge.From)}
	}
	box, paper := g.pixels(path.Bounds()), g.piece.Box()
	var found []image.Point
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			if p := g.at(x, y); within(sides, p) && paper.Contains(p) {
				found = append(found, image.Point{X: x, Y: y})
			}
		}
	}
	return found
}

// line is a side of a path.
type line struct{ from, along geometry.Vec2 }

// within tells whether a point lies in an anticlockwise convex path.
func within(sides []line, p geometry.Vec2) bool {
	for i := range sides {
		if sides[i].along.Cross(p.Sub(sides[i].from)) < 0 {
			return false
		}
	}
	return true
}

func (g *ground) inked(x, y int) bool {
	pixel := g.picture.Pix[y*g.picture.Stride+4*x:][:3]
	return min(pixel[0], pixel[1], pixel[2]) < 255-leastInk
}
