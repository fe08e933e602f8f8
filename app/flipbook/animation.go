package flipbook

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/draw"
	"image/gif"
	"io"
	"math"

	"gussetwright/app/folding"
	"gussetwright/geometry/phrase"
)

// mostBytes is how large an animation becomes at most, so that it can be sent by mail.
// Pictures of the motion are left out until it is no larger.
const mostBytes = 4_000_000

// GIF writes the folding as an animated GIF of 480 pixels: for each stage its name, a
// view that comes over from the last, the creases that are folded, and the motion. It
// begins anew when it is over. Nothing is written when ctx ends before.
func GIF(ctx context.Context, w io.Writer, order Order) error {
	film, err := drawn(ctx, order)
	if err != nil {
		return phrase.Errorf("draw the folding: %s", err)
	}
	for every := 1; ; every *= 2 {
		if err := ctx.Err(); err != nil {
			return phrase.Errorf("draw the folding: %s", err)
		}
		var out bytes.Buffer
		if err := gif.EncodeAll(&out, film.animation(every)); err != nil {
			return phrase.Errorf("write the folding: %s", err)
		}
		if out.Len() <= mostBytes || every > moving {
			_, err := out.WriteTo(w)
			return err
		}
	}
}

// frame is a picture of the animation.
type frame struct {
	shot  folding.Shot
	delay int     // how long it stands, in hundredths of a second
	still bool    // to be looked at, not passed over
	look  []uint8 // places in the palette
}

// Of the motion: pictures of a change of the view and of a stage, and how long pictures
// stand.
const (
	turning     = 5
	moving      = 14
	quick       = 7   // hundredths of a second
	beforeMove  = 60  // to read the name
	afterMove   = 70  // to look at what was done
	atTheEnd    = 300 // before it begins anew
	fineSamples = 2
)

// frames returns the pictures of the animation that are to be drawn.
func (m *maker) frames() []frame {
	var list []frame
	add := func(stage int, moment, back float64, delay int) {
		list = append(list, frame{shot: shotOf(stage, moment, back), delay: delay, still: delay != quick})
	}
	for stage := range m.stages() {
		if stage > 0 {
			for k := 1; k < turning; k++ {
				add(stage, 0, 1-eased(float64(k)/turning), quick)
			}
		}
		add(stage, 0, 0, beforeMove)
		if m.studio.Lesson.Stages[stage].Name != "blank" { // in which nothing moves
			for k := 1; k < moving; k++ {
				add(stage, eased(float64(k)/moving), 0, quick)
			}
		}
		add(stage, 1, 0, afterMove)
	}
	list[len(list)-1].delay = atTheEnd
	return list
}

func shotOf(stage int, moment, back float64) folding.Shot {
	return folding.Shot{
		Stage: stage, Moment: moment, Back: back, Width: side, Height: side, Samples: fineSamples,
		Lit: true, Glue: moment < 1, Ground: ground,
	}
}

// eased lets a motion begin and end gently.
func eased(share float64) float64 { return (1 - math.Cos(math.Pi*share)) / 2 }

// film is all frames, drawn.
type film struct {
	palette color.Palette
	size    image.Rectangle
	frames  []frame
}

// drawn draws all frames. Their palette is made from some of them first.
func drawn(ctx context.Context, order Order) (*film, error) {
	m, err := newMaker(ctx, order)
	if err != nil {
		return nil, err
	}
	titles, err := m.titles()
	if err != nil {
		return nil, err
	}
	f := &film{frames: m.frames(), size: image.Rect(0, 0, side, side+titles[0].Rect.Dy())}
	if f.palette, err = m.palette(ctx, titles); err != nil {
		return nil, err
	}
	match := newMatcher(f.palette)
	for i := range f.frames {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		f.frames[i].look = match.all(m.picture(f.frames[i].shot, titles))
	}
	return f, nil
}

// titles returns what stands below the bag in each stage, all of one height.
func (m *maker) titles() ([]*image.RGBA, error) {
	const width = side / perMM
	lines, most := make([][]string, m.stages()), 0
	for stage := range lines {
		lines[stage] = titleStyle.Lines(m.heading(stage), width-2*padding)
		most = max(most, len(lines[stage]))
	}
	titles := make([]*image.RGBA, len(lines))
	for stage := range titles {
		var err error
		if titles[stage], err = words(width, titleStyle.Height(most)+2*padding, block{lines[stage], titleStyle}); err != nil {
			return nil, err
		}
	}
	return titles, nil
}

// palette returns colours for all frames, from the middle and the end of each stage.
func (m *maker) palette(ctx context.Context, titles []*image.RGBA) (color.Palette, error) {
	seen := census{}
	for stage := range m.stages() {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		for _, moment := range []float64{0.5, 1} {
			seen.add(m.picture(shotOf(stage, moment, 0), titles))
		}
	}
	return seen.palette(), nil
}

// picture returns a frame with its title below.
func (m *maker) picture(shot folding.Shot, titles []*image.RGBA) *image.RGBA {
	title := titles[shot.Stage]
	all := image.NewRGBA(image.Rect(0, 0, side, side+title.Rect.Dy()))
	bag := m.studio.Take(shot)
	draw.Draw(all, bag.Rect, bag, image.Point{}, draw.Src)
	m.studio.GiveBack(bag)
	draw.Draw(all, image.Rect(0, side, side, all.Rect.Max.Y), title, image.Point{}, draw.Src)
	return all
}

// animation returns the frames with so many of those of a motion as every says: all for
// 1, every second for 2. Of each only the rectangle is kept in which something changes,
// with what stays the same transparent.
func (f *film) animation(every int) *gif.GIF {
	g := &gif.GIF{Config: image.Config{ColorModel: f.palette, Width: f.size.Dx(), Height: f.size.Dy()}}
	var shown []uint8
	passed := 0
	for i := range f.frames {
		next := &f.frames[i]
		if passed++; next.still {
			passed = 0
		}
		changed := f.size
		if shown != nil {
			changed = f.changed(shown, next.look)
		}
		if last := len(g.Delay) - 1; changed.Empty() || passed%every != 0 {
			g.Delay[last] += next.delay
			continue
		}
		g.Image = append(g.Image, f.difference(shown, next.look, changed))
		g.Delay = append(g.Delay, next.delay)
		g.Disposal = append(g.Disposal, gif.DisposalNone)
		shown = next.look
	}
	return g
}

// changed returns the rectangle outside of which two frames look alike.
func (f *film) changed(a, b []uint8) image.Rectangle {
	var changed image.Rectangle
	width := f.size.Dx()
	for y := range f.size.Dy() {
		rowA, rowB := a[y*width:(y+1)*width], b[y*width:(y+1)*width]
		if bytes.Equal(rowA, rowB) {
			continue
		}
		first, last := 0, width-1
		for rowA[first] == rowB[first] {
			first++
		}
		for rowA[last] == rowB[last] {
			last--
		}
		changed = changed.Union(image.Rect(first, y, last+1, y+1))
	}
	return changed
}

// difference returns what to lay over a frame, nil for none, so that it becomes the next.
func (f *film) difference(shown, next []uint8, changed image.Rectangle) *image.Paletted {
	still := uint8(len(f.palette) - 1)
	width := f.size.Dx()
	laid := image.NewPaletted(changed, f.palette)
	for y := changed.Min.Y; y < changed.Max.Y; y++ {
		for x := changed.Min.X; x < changed.Max.X; x++ {
			at := y*width + x
			place := next[at]
			if shown != nil && place == shown[at] {
				place = still
			}
			laid.Pix[laid.PixOffset(x, y)] = place
		}
	}
	return laid
}
