package sheetpicture

import (
	"image"
	"image/color"
	"math"
	"strconv"

	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/sheet"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// Art is what a picture of a sheet shows.
type Art struct {
	Plan   *sheet.Plan
	Blank  *blank.Blank
	Length func(mm float64) string // writes a length with its unit
}

// artist paints sheets. It keeps its pixels from picture to picture.
type artist struct {
	painter flat.Painter
	pixels  *image.RGBA

	art     Art
	look    look
	colours *flat.Palette // of lines and letters
	letter  float64       // height of letters in pixels
	line    float64       // width of lines in pixels
	view    flat.View
	items   []scene.Item
	names   []scene.Item // lettering over the creases of blanks
}

// Sizes of the picture, in heights of its letters.
const (
	stripHeight  = 1.6 // beside the sheet, for its measures
	hatchSpacing = 0.75
	leastNamed   = 7 // a blank that is larger says where its top is
	leastCreased = 4 // a blank that is larger shows its creases
	headLength   = 0.6
)

// mostNumbered bounds the blanks that get a number and an arrow: more could not be read.
const mostNumbered = 80

// paint paints a sheet on so many pixels.
func (a *artist) paint(art Art, look look, width, height int, letter, density float64) *image.RGBA {
	if a.pixels == nil || a.pixels.Rect.Dx() != width || a.pixels.Rect.Dy() != height {
		a.pixels = image.NewRGBA(image.Rect(0, 0, width, height))
	}
	a.art, a.look, a.letter, a.line = art, look, letter, max(1, math.Round(density))
	a.items, a.names = a.items[:0], a.names[:0]
	a.colours = look.palette()
	missing, misses := a.missing()
	extent := a.sheetBox()
	if misses {
		extent = extent.Union(missing.Box(0))
	}
	a.frame(extent)
	a.painter.Begin(a.pixels, a.view)
	a.painter.Clear(look.ground)
	a.paintSheet(!misses)
	for i := range art.Plan.Placements {
		a.paintBlank(art.Plan, i, false)
	}
	if misses {
		a.paintBlank(missing, 0, true)
		a.paintOverhang(missing.Box(0))
		a.painter.Outline(look.ink, a.sheetBox().Path(), a.line)
	}
	a.paintMeasures(extent)
	a.draw()
	a.painter.Draw(scene.Drawing{Items: a.names}, a.look.overCreases(), flat.AllLayers())
	return a.pixels
}

// draw paints the lines and letters that were gathered, over what is there.
func (a *artist) draw() {
	a.painter.Draw(scene.Drawing{Items: a.items}, a.colours, flat.AllLayers())
	a.items = a.items[:0]
}

func (a *artist) sheetBox() geometry.Rect {
	return geometry.RectAt(0, 0, a.art.Plan.Sheet.Width, a.art.Plan.Sheet.Height)
}

// missing returns the plan with the one blank that does not fit where it would have to
// lie, turned as it comes nearer to fitting.
func (a *artist) missing() (plan *sheet.Plan, misses bool) {
	p := *a.art.Plan
	if p.Up() > 0 {
		return nil, false
	}
	best := math.Inf(1)
	for _, turn := range []int{0, 90} {
		trial := p
		trial.Placements = []sheet.Placement{{X: p.Usable.Min.X, Y: p.Usable.Min.Y, Turn: turn}}
		over := trial.Box(0).Max.Sub(p.Usable.Max)
		miss := geometry.Vec2{X: max(over.X, 0), Y: max(over.Y, 0)}
		if off := miss.Sub(p.TooLong).Length(); off < best-geometry.Tolerance {
			best, plan = off, &trial
		}
	}
	return plan, true
}

// frame puts an extent in mm into the middle of the pixels, with room for the measures.
func (a *artist) frame(extent geometry.Rect) {
	strip := stripHeight * a.letter
	left, right, top, bottom := a.line, strip, strip, strip
	if sheet.GripOf(a.art.Plan.Sheet) == sheet.GripLeft {
		left = strip
	}
	size := a.pixels.Rect.Size()
	width, height := float64(size.X)-left-right, float64(size.Y)-top-bottom
	scale := max(min(width/extent.Width(), height/extent.Height()), 1e-6)
	x, y := left+(width-extent.Width()*scale)/2, top+(height-extent.Height()*scale)/2
	a.view = flat.View{Scale: scale, Origin: geometry.Vec2{X: extent.Min.X - x/scale, Y: extent.Max.Y + y/scale}, Pen: a.line}
}

// mm returns so many pixels as a length on the sheet.
func (a *artist) mm(pixels float64) float64 { return pixels / a.view.Scale }

// paintSheet paints the paper, with its waste hatched where something fits, the zone of
// the gripper and the margins.
func (a *artist) paintSheet(hatched bool) {
	box, s := a.sheetBox(), a.art.Plan.Sheet
	a.painter.Fill(a.look.paper, box.Path())
	if hatched {
		a.hatch(faint(a.look.muted, 0.32), box, 1)
	}
	zone := gripperZone(s)
	if !zone.Empty() {
		a.painter.Fill(between(a.look.paper, a.look.muted, 0.75), zone.Path())
	}
	if !a.art.Plan.Usable.Empty() {
		dash := []float64{a.mm(4 * a.line), a.mm(3 * a.line)}
		a.stroke(inMuted, a.art.Plan.Usable.Path(), dash)
		a.draw()
	}
	a.painter.Outline(a.look.ink, box.Path(), a.line)
}

// hatch fills a rectangle with slanted lines, rising to the right where lean is 1 and
// falling where it is −1.
func (a *artist) hatch(c color.NRGBA, box geometry.Rect, lean float64) {
	step := a.mm(hatchSpacing*a.letter) * math.Sqrt2
	half := a.mm(a.line) * math.Sqrt2 / 2
	var lines []geometry.Path
	for at := box.Min.X - box.Height() + step/2; at < box.Max.X; at += step {
		low, high := max(at, box.Min.X), min(at+box.Height(), box.Max.X)
		y := func(x float64) float64 {
			if lean < 0 {
				return box.Max.Y - (x - at)
			}
			return box.Min.Y + (x - at)
		}
		if high > low {
			lines = append(lines, geometry.Polygon(
				geometry.Vec2{X: low, Y: y(low) - half}, geometry.Vec2{X: high, Y: y(high) - half},
				geometry.Vec2{X: high, Y: y(high) + half}, geometry.Vec2{X: low, Y: y(low) + half},
			))
		}
	}
	a.painter.Fill(c, lines...)
}

// paintBlank paints the i-th blank of a plan as it is cut. One that does not fit lets
// the sheet be seen.
func (a *artist) paintBlank(plan *sheet.Plan, i int, misses bool) {
	piece, motion := &a.art.Blank.Pieces[0], plan.Motion(i)
	outline := moved(piece.Outline, motion)
	fill := a.look.blank
	if misses {
		fill = faint(a.look.accent, 0.16)
	}
	a.painter.Fill(fill, outline)
	box := plan.Box(i)
	small := min(box.Width(), box.Height()) * a.view.Scale / a.letter
	if small > leastCreased {
		for j := range piece.Lines {
			if line := &piece.Lines[j]; line.Kind == blank.Crease {
				a.stroke(inCrease, straight(motion.At(line.From), motion.At(line.To)), nil)
			}
		}
	}
	a.painter.Outline(a.look.accent, outline, 1.5*a.line)
	if i < mostNumbered && !misses {
		a.number(i, box, motion, small)
	}
}

// number writes which blank it is and points to its top.
func (a *artist) number(i int, box geometry.Rect, motion geometry.Affine, small float64) {
	if small < 1.2 {
		return
	}
	up, middle := motion.Vector(geometry.Vec2{Y: 1}), box.Center()
	reach := box.Width()
	if math.Abs(up.Y) > math.Abs(up.X) {
		reach = box.Height()
	}
	letter := a.mm(a.letter)
	foot := middle.Sub(geometry.Vec2{Y: 0.36 * letter})
	tip := min(reach*0.3, 2.2*letter)
	if small >= leastNamed {
		tip = min(tip, reach/2-2*letter) // short of the word
	}
	if small >= 2.4 {
		shift := up.Scale(0.75 * letter)
		foot = foot.Sub(shift)
		a.arrow(inInk, middle.Add(up.Scale(0.1*letter)), middle.Add(up.Scale(tip)))
	}
	a.names = append(a.names, a.label(inInk, strconv.Itoa(i+1), foot, scene.Middle, 0, true))
	if small >= leastNamed {
		// The word stands as it would be read on the bag.
		edge := middle.Add(up.Scale(reach/2 - 1.5*letter))
		a.names = append(a.names, a.label(inInk, lang.L("Top"), edge, scene.Middle, motion.Vector(geometry.Vec2{X: 1}).Angle(), false))
	}
}

// arrow draws an arrow.
func (a *artist) arrow(role scene.Role, from, to geometry.Vec2) {
	along := to.Sub(from).Unit()
	head := a.mm(headLength * a.letter)
	back := to.Sub(along.Scale(head))
	side := along.Left().Scale(head * 0.42)
	a.stroke(role, straight(from, back), nil)
	a.items = append(a.items, scene.Fill{Role: role, Path: geometry.Polygon(to, back.Add(side), back.Sub(side))})
}

func (a *artist) stroke(role scene.Role, path geometry.Path, dash []float64) {
	a.items = append(a.items, scene.Stroke{Role: role, Path: path, Width: 0.25, Dash: dash})
}

func (a *artist) write(role scene.Role, text string, at geometry.Vec2, anchor scene.Anchor, turn float64, bold bool) {
	a.items = append(a.items, a.label(role, text, at, anchor, turn, bold))
}

func (a *artist) label(role scene.Role, text string, at geometry.Vec2, anchor scene.Anchor, turn float64, bold bool) scene.Label {
	return scene.Label{Role: role, Text: text, At: at, Size: a.mm(a.letter), Anchor: anchor, Turn: turn, Bold: bold}
}

// moved returns a path after a motion that turns no path over.
func moved(path geometry.Path, by geometry.Affine) geometry.Path {
	to := geometry.Path{Closed: path.Closed, Vertices: make([]geometry.Vertex, len(path.Vertices))}
	for i, v := range path.Vertices {
		v.Vec2 = by.At(v.Vec2)
		to.Vertices[i] = v
	}
	return to
}

func straight(from, to geometry.Vec2) geometry.Path {
	return geometry.Path{Vertices: []geometry.Vertex{{Vec2: from}, {Vec2: to}}}
}

// gripperZone is the strip that the press holds.
func gripperZone(s bag.Sheet) geometry.Rect {
	if sheet.GripOf(s) == sheet.GripBottom {
		return geometry.RectAt(0, 0, s.Width, s.Gripper)
	}
	return geometry.RectAt(0, 0, s.Gripper, s.Height)
}
