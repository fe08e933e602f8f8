package flipbook

import (
	"context"
	"image"
	"image/draw"
	"image/png"
	"io"

	"gussetwright/app/folding"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// Strip writes a PNG picture with the end of each stage in rows of four, 480 pixels each,
// and what is done below it, in letters that can still be read when the picture is as wide
// as a page. Nothing is written when ctx ends before.
func Strip(ctx context.Context, w io.Writer, order Order) error {
	picture, err := strip(ctx, order)
	if err != nil {
		return phrase.Errorf("draw the strip of the folding: %s", err)
	}
	if err := png.Encode(w, picture); err != nil {
		return phrase.Errorf("write the strip of the folding: %s", err)
	}
	return nil
}

const (
	gap   = 8 // pixels between the pictures of a strip
	inRow = 4
)

// The words of a strip: on a page 277 mm wide, A4 without its margins, the captions are
// set in 9 points.
var (
	stripTitle   = report.Style{Size: 6.5, Bold: true, Colour: dark, Leading: 1.3}
	stripCaption = report.Style{Size: 5.5, Colour: faint, Leading: 1.3}
)

// caption is what stands below a picture of a strip.
type caption struct{ title, text []string }

func (c *caption) height() float64 {
	return stripTitle.Height(len(c.title)) + stripCaption.Height(len(c.text)) + 2*padding
}

func (m *maker) caption(stage int) caption {
	const width = side / perMM
	return caption{
		stripTitle.Lines(m.heading(stage), width-2*padding),
		stripCaption.Lines(m.studio.Lesson.Stages[stage].Caption.In(m.Say), width-2*padding),
	}
}

func strip(ctx context.Context, order Order) (*image.RGBA, error) {
	m, err := newMaker(ctx, order)
	if err != nil {
		return nil, err
	}
	var captions []caption
	var rooms []float64 // below the pictures of each row, mm
	for i := range m.stages() {
		captions = append(captions, m.caption(i))
		if i%inRow == 0 {
			rooms = append(rooms, 0)
		}
		rooms[i/inRow] = max(rooms[i/inRow], captions[i].height())
	}
	tall := -gap
	for _, room := range rooms {
		tall += side + int(room*perMM) + gap
	}
	all := image.NewRGBA(image.Rect(0, 0, min(m.stages(), inRow)*(side+gap)-gap, tall))
	draw.Draw(all, all.Rect, image.White, image.Point{}, draw.Src)
	top := 0
	for i := range captions {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if i > 0 && i%inRow == 0 {
			top += side + int(rooms[i/inRow-1]*perMM) + gap
		}
		if err := m.cell(all, image.Pt(i%inRow*(side+gap), top), i, captions[i], rooms[i/inRow]); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// cell draws the end of a stage at a place, with the words in the room below it.
func (m *maker) cell(all *image.RGBA, at image.Point, stage int, c caption, room float64) error {
	picture := m.studio.Take(folding.Shot{
		Stage: stage, Moment: 1, Width: side, Height: side, Samples: 3, Lit: true, Close: true, Ground: ground,
	})
	draw.Draw(all, image.Rect(0, 0, side, side).Add(at), picture, image.Point{}, draw.Src)
	m.studio.GiveBack(picture)
	below, err := words(side/perMM, room, block{c.title, stripTitle}, block{c.text, stripCaption})
	if err != nil {
		return err
	}
	draw.Draw(all, below.Rect.Add(at).Add(image.Pt(0, side)), below, image.Point{}, draw.Src)
	return nil
}
