package proof

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/draw"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
	"gussetwright/render/scene"
	"gussetwright/render/solid"
)

// shot is one of the views that stand beside each other at one scale.
type shot struct {
	name    string
	view    solid.View
	outline geometry.Rect // mm of the view
	// nearer is how much larger than in the middle of the scene the side looks that is
	// turned to the camera.
	nearer float64
	foot   geometry.Vec2 // on which the bag stands, whatever stands beside it: mm of the view
}

// size returns the width and the height in mm, as measured on the side that is seen.
func (s *shot) size() geometry.Vec2 {
	return geometry.Vec2{X: s.outline.Width() / s.nearer, Y: s.outline.Height() / s.nearer}
}

// standingUp lifts the camera, in radians, as from eye level: the bag then stands on
// the ground.
const standingUp = 0.06

// shots returns the views in two rows: standing, and from above and below.
func (b *builder) shots() [][]shot {
	up := func(camera solid.Camera) solid.Camera {
		camera.Elevation = standingUp
		return camera
	}
	across, deep := b.stage.greatest.X-b.stage.least.X, b.stage.greatest.Y-b.stage.least.Y
	standing := []shot{
		b.shot(b.say("Front"), up(solid.Front), across, b.reference()),
		b.shot(b.say("Back"), up(solid.Back), across, solid.NoReference),
	}
	if b.isFlat() {
		return [][]shot{standing}
	}
	standing = append(standing, b.shot(b.say("Side"), up(solid.Right), deep, solid.NoReference))
	lying := []shot{b.shot(b.say("Inside, seen from above"), solid.Top, across, solid.NoReference)}
	if b.hasFloor() {
		lying = append(lying, b.shot(b.say("Base, seen from below"), solid.Below, across, solid.NoReference))
	}
	return [][]shot{standing, lying}
}

// shot returns a view of the bag, of whose paper a side of the given width in mm is seen.
func (b *builder) shot(name string, camera solid.Camera, width float64, beside solid.Reference) shot {
	look := solid.LightLook()
	look.Above, look.Below, look.Shadow = viewsGround, viewsGround, 0.35
	if camera.Elevation != standingUp {
		look.Shadow = 0 // seen from above it would lie beside the bag like a stain
	}
	s := shot{name: name, view: b.stage.view(camera, look)}
	s.view.Frame = b.stage.model.Frame(beside, 0)
	paper := s.view
	paper.Model = b.stage.bare
	alone := b.stage.outline(paper)
	s.nearer = alone.Width() / width
	s.foot = geometry.Vec2{X: alone.Center().X, Y: alone.Min.Y}
	s.view.Reference = beside
	s.outline = b.stage.outline(s.view)
	return s
}

// reference returns what stands beside the bag for scale.
func (p *Proof) reference() solid.Reference {
	const large = 450 // mm of height, beside which a can is lost
	if p.Snapshot.Spec.Body.Height > large {
		return solid.SheetA4
	}
	return solid.Can33
}

// scaleNote tells how to read the views.
func (p *Proof) scaleNote() string {
	if p.reference() == solid.SheetA4 {
		return p.tell(phrase.New("All views at one scale. For comparison: a sheet of A4 paper, %s high.", p.length(297)))
	}
	return p.tell(phrase.New("All views at one scale. For comparison: a drinks can, %s high.", p.length(115)))
}

// Of the views on the page.
const (
	viewsPixels  = 11.0  // to the mm of the page, some 280 to the inch
	viewsQuality = 90    // of JPEG
	leastGap     = 9.0   // mm of the page between views and around them
	captionSize  = 2.9   // mm
	captionRoom  = 7.0   // mm below each row
	mostHeight   = 138.0 // mm of the page that the rows themselves take
	mostScale    = 0.5   // of life, so that a small bag is seen to be small
)

// viewsGround is behind the views; it has one colour so that they stand together.
var viewsGround = color.RGBA{240, 238, 234, 255}

// band is the picture of all views with their places on it.
type band struct {
	scale  float64 // mm of the page for each mm of the bag
	width  float64 // mm of the page
	height float64
	rows   []bandRow
}

type bandRow struct {
	shots  []shot
	lefts  []float64 // of the views, mm from the left
	gap    float64   // between the views
	foot   float64   // on which they stand, mm from the upper edge
	height float64
}

// newBand finds the greatest scale at which all views fit.
func newBand(rows [][]shot, width float64) band {
	b := band{scale: mostScale, width: width}
	high := 0.0
	for _, shots := range rows {
		wide, tall := extent(shots)
		b.scale = min(b.scale, (width-leastGap*float64(len(shots)+1))/wide)
		high += tall
	}
	b.scale = min(b.scale, mostHeight/high)
	b.height = leastGap * 0.8
	for _, shots := range rows {
		wide, tall := extent(shots)
		row := bandRow{shots: shots, height: tall * b.scale}
		row.gap = (width - wide*b.scale) / float64(len(shots)+1)
		row.foot = b.height + row.height
		left := row.gap
		for i := range shots {
			row.lefts = append(row.lefts, left)
			left += shots[i].size().X*b.scale + row.gap
		}
		b.rows = append(b.rows, row)
		b.height = row.foot + captionRoom + leastGap*0.5
	}
	return b
}

// extent returns the width of views side by side and the height of the tallest.
func extent(shots []shot) (wide, tall float64) {
	for i := range shots {
		size := shots[i].size()
		wide, tall = wide+size.X, max(tall, size.Y)
	}
	return wide, tall
}

// draw returns the picture of the band.
func (b *band) draw(s *stage) *image.RGBA {
	pixels := func(mm float64) int { return int(math.Round(mm * viewsPixels)) }
	picture := image.NewRGBA(image.Rect(0, 0, pixels(b.width), pixels(b.height)))
	draw.Draw(picture, picture.Rect, image.NewUniform(viewsGround), image.Point{}, draw.Src)
	for _, row := range b.rows {
		for i := range row.shots {
			shot := &row.shots[i]
			size, scale := shot.size().Scale(b.scale), b.scale/shot.nearer
			cell := image.Rect(
				pixels(row.lefts[i]-row.gap/2), pixels(row.foot-row.height-leastGap/2),
				pixels(row.lefts[i]+size.X+row.gap/2), pixels(row.foot+leastGap/2))
			v := shot.view
			v.Width, v.Height = cell.Dx(), cell.Dy()
			foot := geometry.Vec2{X: row.lefts[i] + (shot.foot.X-shot.outline.Min.X)*scale, Y: row.foot}.Scale(viewsPixels)
			aim(&v, viewsPixels*scale, shot.foot, foot.Sub(geometry.Vec2{X: float64(cell.Min.X), Y: float64(cell.Min.Y)}))
			drawn := s.draw(v)
			fade(drawn, pixels(row.gap/2))
			draw.Draw(picture, cell, drawn, image.Point{}, draw.Src)
			s.renderer.Recycle(drawn)
		}
	}
	return picture
}

// fade lets a picture go over into the ground at its left and right edges, so that no
// shadow is cut off there.
func fade(picture *image.RGBA, breadth int) {
	width := picture.Rect.Dx()
	for x := range breadth {
		share := float64(x) / float64(breadth)
		share *= share * (3 - 2*share) // without a visible beginning
		for _, column := range []int{x, width - 1 - x} {
			for y := range picture.Rect.Dy() {
				pixel := picture.Pix[y*picture.Stride+4*column:][:3:3]
				for c, ground := range [3]uint8{viewsGround.R, viewsGround.G, viewsGround.B} {
					pixel[c] = uint8(float64(ground) + (float64(pixel[c])-float64(ground))*share + 0.5)
				}
			}
		}
	}
}

// viewsAndColours lays out the views and the colours.
func (b *builder) viewsAndColours() error {
	b.column.Heading(2, b.say("The bag from all sides"))
	if b.band.height == 0 {
		b.band = newBand(b.shots(), b.column.Width())
		b.bandPicture = b.band.draw(b.stage)
	}
	if err := b.ctx.Err(); err != nil {
		return err
	}
	area := b.column.Reserve(b.band.height)
	b.column.Add(report.Picture{Rect: area, Image: b.bandPicture, Quality: viewsQuality})
	b.captions(area)
	b.column.Write(report.Block{Kind: report.Note, Text: b.scaleNote()})
	b.setColours()
	return nil
}

// captions names the views below them.
func (b *builder) captions(area geometry.Rect) {
	style := report.Style{Size: captionSize, Colour: faint}
	for _, row := range b.band.rows {
		for i := range row.shots {
			shot := &row.shots[i]
			middle := row.lefts[i] + (shot.foot.X-shot.outline.Min.X)/shot.nearer*b.band.scale
			text := textAt(style, shot.name, area.Min.X+middle, area.Max.Y-row.foot-3)
			text.Align = scene.Middle
			b.column.Add(text)
		}
	}
}
