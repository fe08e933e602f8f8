package flipbook

import (
	"context"
	"image"
	"image/draw"
	"image/png"
	"io"

	"gussetwright/app/folding"
	"gussetwright/geometry/phrase"
)

// Strip writes a PNG picture with the end of each stage side by side, 480 pixels each,
// and what is done below it. Nothing is written when ctx ends before.
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

const gap = 8 // pixels between the pictures of a strip

func strip(ctx context.Context, order Order) (*image.RGBA, error) {
	m, err := newMaker(ctx, order)
	if err != nil {
		return nil, err
	}
	const width = side / perMM
	titles, captions := make([][]string, m.stages()), make([][]string, m.stages())
	room := 0.0
	for i := range titles {
		titles[i] = titleStyle.Lines(m.heading(i), width-2*padding)
		captions[i] = textStyle.Lines(m.studio.Lesson.Stages[i].Caption.In(m.Say), width-2*padding)
		room = max(room, titleStyle.Height(len(titles[i]))+textStyle.Height(len(captions[i]))+2*padding)
	}
	count := m.stages()
	all := image.NewRGBA(image.Rect(0, 0, count*(side+gap)-gap, side+int(room*perMM)))
	draw.Draw(all, all.Rect, image.White, image.Point{}, draw.Src)
	for i := range titles {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		left := i * (side + gap)
		picture := m.studio.Take(folding.Shot{Stage: i, Moment: 1, Width: side, Height: side, Samples: 3, Lit: true, Close: true, Ground: ground})
		draw.Draw(all, image.Rect(left, 0, left+side, side), picture, image.Point{}, draw.Src)
		m.studio.GiveBack(picture)
		below, err := words(width, room, titles[i], captions[i])
		if err != nil {
			return nil, err
		}
		draw.Draw(all, image.Rect(left, side, left+side, all.Rect.Max.Y), below, image.Point{}, draw.Src)
	}
	return all, nil
}
