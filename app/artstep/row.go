package artstep

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/render/artwork"
)

// row shows one piece: a small picture, the name of its file, its place, and how it
// stands with it.
type row struct {
	art       *artwork.Art // whose picture is shown
	ground    *canvas.Rectangle
	picture   *canvas.Image
	name      *entry.Text
	placeText *entry.Text
	mark      *widget.Icon
	sign      sign
	state     *entry.Text
	alone     *entry.Text // that changes to the file are not followed
}

func newRow() *row {
	r := &row{
		ground: canvas.NewRectangle(color.Transparent), picture: &canvas.Image{FillMode: canvas.ImageFillContain},
		name: entry.NewText("", entry.Plain), placeText: entry.NewText("", entry.Muted),
		mark: widget.NewIcon(waiting.resource()), state: entry.NewText("", entry.Small),
		alone: entry.NewText("", entry.Muted),
	}
	r.ground.StrokeWidth = 1
	return r
}

// show shows a piece. Only what changed is touched.
func (r *row) show(state document.State, index int, unfollowed bool) {
	alone := ""
	if unfollowed {
		alone = lang.L("Changes to the file are not followed: not found on disk.")
	}
	r.alone.SetText(alone)
	piece := state.Spec.Artwork[index]
	r.name.SetText(piece.File)
	r.placeText.SetText(words.Place(piece.On))
	now := conditionOf(state.Snapshot, index)
	r.state.SetText(now.text)
	if now.sign != r.sign {
		r.sign = now.sign
		r.mark.SetResource(now.sign.resource())
	}
	var art *artwork.Art
	if index < len(state.Snapshot.Hung) {
		art = state.Snapshot.Hung[index].Art
	}
	if art != r.art {
		r.art = art
		r.picture.Image = nil
		if art != nil {
			r.picture.Image = small(art)
		}
		r.picture.Refresh()
	}
}

// smallest is how many pixels the longer side of a small picture has at least; a row
// shows fewer also on a fine screen.
const smallest = 120

// small returns the smallest picture of artwork that is large enough.
func small(art *artwork.Art) image.Image {
	if len(art.Levels) == 0 {
		return nil
	}
	best := art.Levels[0]
	for _, level := range art.Levels {
		if max(level.Rect.Dx(), level.Rect.Dy()) >= smallest {
			best = level
		}
	}
	return best
}

// Sizes of a row, in paddings of the theme or in heights of its letters.
const (
	rowInset    = 1.25
	pictureSide = 3.2
)

func padding(l *list) float32 { return l.Theme().Size(theme.SizeNamePadding) }

func side(l *list) float32 { return l.Theme().Size(theme.SizeNameText) * pictureSide }

// left is where the words begin.
func left(l *list) float32 { return side(l) + 4*padding(l) }

// markSize is that of the sign before how it stands.
func markSize(l *list) float32 { return l.Theme().Size(theme.SizeNameCaptionText) * 1.4 }

func (r *row) heightFor(l *list, width float32) float32 {
	words := max(width-left(l)-padding(l), 1)
	text := r.name.HeightFor(words) + r.placeText.HeightFor(words) + r.stateHeight(l, words) + r.alone.HeightFor(words)
	return max(text, side(l)) + 2*rowInset*padding(l)
}

func (r *row) stateHeight(l *list, words float32) float32 {
	return max(r.state.HeightFor(words-markSize(l)-padding(l)), markSize(l))
}

// place puts the parts of the row where they belong, from its upper left corner.
func (r *row) place(l *list, at fyne.Position, width float32) {
	inset, words := rowInset*padding(l), max(width-left(l)-padding(l), 1)
	frame := at.AddXY(2*padding(l), inset)
	put(r.ground, frame, fyne.NewSquareSize(side(l)))
	put(r.picture, frame.AddXY(1, 1), fyne.NewSquareSize(side(l)-2))
	top := at.AddXY(left(l), inset)
	for _, text := range []*entry.Text{r.name, r.placeText} {
		put(text, top, fyne.NewSize(words, text.HeightFor(words)))
		top = top.AddXY(0, text.HeightFor(words))
	}
	put(r.mark, top, fyne.NewSquareSize(markSize(l)))
	beside := markSize(l) + padding(l)
	put(r.state, top.AddXY(beside, 0), fyne.NewSize(words-beside, r.state.HeightFor(words-beside)))
	put(r.alone, top.AddXY(0, r.stateHeight(l, words)), fyne.NewSize(words, r.alone.HeightFor(words)))
}

func (r *row) colour(th fyne.Theme, variant fyne.ThemeVariant) {
	r.ground.FillColor = color.White // about the paper, whatever the theme
	r.ground.StrokeColor = th.Color(theme.ColorNameInputBorder, variant)
}

func (r *row) objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.picture, r.name, r.placeText, r.mark, r.state, r.alone}
}
