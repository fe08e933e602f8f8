package sheetpicture

import (
	"image"
	"image/color"
	"math"
	"strconv"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
	"gussetwright/render/scene"
)

// FormArt is what a picture of a form of ganged bags shows.
type FormArt struct {
	Sheet    bag.Sheet
	Usable   geometry.Rect // of the sheet, by blanks
	Form     *gang.Form
	Items    []gang.Item
	Outlines []geometry.Path // of the pieces of the items
}

// formArtist paints forms. It keeps its pixels from picture to picture.
type formArtist struct{ artist }

// paintForm paints a form on so many pixels: each bag in a colour and with a number of
// its own.
func (a *formArtist) paintForm(art FormArt, look look, width, height int, letter, density float64) *image.RGBA {
	if a.pixels == nil || a.pixels.Rect.Dx() != width || a.pixels.Rect.Dy() != height {
		a.pixels = image.NewRGBA(image.Rect(0, 0, width, height))
	}
	a.art = Art{Plan: &sheet.Plan{Sheet: art.Sheet, Usable: art.Usable}}
	a.look, a.letter, a.line, a.items = look, letter, max(1, math.Round(density)), a.items[:0]
	a.colours = look.palette()
	a.fit(width, height)
	a.painter.Begin(a.pixels, a.view)
	a.painter.Clear(look.ground)
	a.paintSheet(true)
	for i := range art.Form.Placements {
		a.paintPiece(&art, &art.Form.Placements[i])
	}
	a.draw()
	return a.pixels
}

// fit puts the sheet into the middle of the pixels, without room for measures.
func (a *formArtist) fit(width, height int) {
	box := a.sheetBox()
	w, h := float64(width)-2*a.line, float64(height)-2*a.line
	scale := max(min(w/box.Width(), h/box.Height()), 1e-6)
	x, y := a.line+(w-box.Width()*scale)/2, a.line+(h-box.Height()*scale)/2
	a.view.Scale, a.view.Pen = scale, a.line
	a.view.Origin = geometry.Vec2{X: box.Min.X - x/scale, Y: box.Max.Y + y/scale}
}

func (a *formArtist) paintPiece(art *FormArt, placed *gang.Placed) {
	plan := sheet.Plan{Sheet: art.Sheet, Piece: art.Items[placed.Item].Piece, Placements: []sheet.Placement{placed.Placement}}
	outline, box := moved(art.Outlines[placed.Item], plan.Motion(0)), plan.Box(0)
	a.painter.Fill(itemColour(&a.look, placed.Item), outline)
	a.painter.Outline(a.look.ink, outline, a.line)
	letter := a.letter
	if room := min(box.Width(), box.Height()) * a.view.Scale; room < 1.3*letter {
		letter = room / 1.3
	}
	const legible = 5 // pixels
	if letter >= legible {
		foot := box.Center().Sub(geometry.Vec2{Y: 0.36 * a.mm(letter)})
		a.items = append(a.items, scene.Label{
			Role: inInk, Text: strconv.Itoa(placed.Item + 1), At: foot, Size: a.mm(letter), Anchor: scene.Middle, Bold: true,
		})
	}
}

// itemColours are told apart by most eyes; the numbers tell all of them apart.
var itemColours = []color.NRGBA{
	{0x2f, 0x7f, 0x86, 255},
	{0xd0, 0x8a, 0x2a, 255},
	{0x7a, 0x5c, 0xa8, 255},
	{0xb8, 0x4d, 0x4d, 255},
	{0x5c, 0x8f, 0x3c, 255},
	{0x3f, 0x6f, 0xb5, 255},
	{0x9a, 0x6a, 0x4a, 255},
	{0xa8, 0x50, 0x8c, 255},
}

// itemColour returns the colour of a bag on the paper of the picture.
func itemColour(look *look, item int) color.NRGBA {
	const strength = 0.5
	return between(look.paper, itemColours[item%len(itemColours)], strength)
}
