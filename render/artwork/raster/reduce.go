package raster

import (
	"context"
	"encoding/binary"
	"image"
	"runtime"
	"sync"

	"gussetwright/render/ink"
)

// Four channels of 8 bits are spread over one word, 16 bits to each, so that one
// multiplication by a weight of at most 256 serves all four.
const (
	laneMask = 0x00ff_00ff_00ff_00ff
	laneHalf = 0x0080_0080_0080_0080
)

func spread(pixel uint32) uint64 {
	return uint64(pixel&0x00ff00ff) | uint64(pixel&0xff00ff00)<<24
}

func pack(lanes uint64) uint32 { return uint32(lanes) | uint32(lanes>>24)&0xff00ff00 }

// span is how one pixel of a reduced row is made: the pixels from first on, by
// weights that add up to 256.
type span struct {
	first   int
	weights []uint64
}

// spans divides a row of pixels among fewer, by the share of each that lies in them.
func spans(from, to int) []span {
	list := make([]span, to)
	for i := range list {
		// In units of 1/to of a pixel, so that the shares are whole numbers.
		start, end := i*from, (i+1)*from
		first, last := start/to, (end-1)/to
		weights := make([]uint64, last-first+1)
		total, widest := uint64(0), 0
		for j := range weights {
			pixel := (first + j) * to
			share := min(end, pixel+to) - max(start, pixel)
			weights[j] = uint64((share*256 + from/2) / from)
			total += weights[j]
			if weights[j] > weights[widest] {
				widest = j
			}
		}
		weights[widest] += 256 - total
		list[i] = span{first, weights}
	}
	return list
}

// reducer takes the rows of a picture one after the other and gives fewer and
// shorter ones: each pixel the mean of the area that it covers.
type reducer struct {
	across, down []span
	emit         func(y int, line []byte) // gets each reduced row
	row          int                      // that comes next
	at           int                      // reduced row that is being summed up
	current, sum []uint64                 // the row reduced across, and the sum of such
	line         []byte
}

func newReducer(from, to image.Point, emit func(y int, line []byte)) *reducer {
	return newBand(from, to, 0, to.Y, emit)
}

// newBand returns a reducer for the reduced rows from first up to end. It takes the rows
// that its method rows tells.
func newBand(from, to image.Point, first, end int, emit func(y int, line []byte)) *reducer {
	r := &reducer{
		across: spans(from.X, to.X), down: spans(from.Y, to.Y)[:end], at: first, emit: emit,
		current: make([]uint64, to.X), sum: make([]uint64, to.X), line: make([]byte, 4*to.X),
	}
	r.row, _ = r.rows()
	return r
}

// rows returns which rows are still to be added: from first up to end.
func (r *reducer) rows() (first, end int) {
	last := r.down[len(r.down)-1]
	return r.down[r.at].first, last.first + len(last.weights)
}

// add takes the next row.
func (r *reducer) add(line []byte) {
	for i := range r.across {
		s := &r.across[i]
		sum := uint64(laneHalf)
		pixels := line[4*s.first:]
		for j, weight := range s.weights {
			sum += spread(binary.LittleEndian.Uint32(pixels[4*j:])) * weight
		}
		r.current[i] = sum >> 8 & laneMask
	}
	for r.at < len(r.down) && r.down[r.at].first <= r.row {
		s := r.down[r.at]
		weight := s.weights[r.row-s.first]
		for i, lanes := range r.current {
			r.sum[i] += lanes * weight
		}
		if r.row < s.first+len(s.weights)-1 {
			break
		}
		r.flush()
	}
	r.row++
}

// flush gives the row that was summed up.
func (r *reducer) flush() {
	for i, sum := range r.sum {
		binary.LittleEndian.PutUint32(r.line[4*i:], pack((sum+laneHalf)>>8&laneMask))
		r.sum[i] = 0
	}
	r.emit(r.at, r.line)
	r.at++
}

// look makes the levels and the map of ink out of the pixels.
func (p *Picture) look(ctx context.Context, pixels samples) error {
	turn := orientation(p.Orientation)
	size := shown(p.Stored)
	finest := image.NewRGBA(image.Rectangle{Max: turn.size(size)})
	colour := screen(pixels.model)
	emit := func(y int, line []byte) {
		colour(line)
		start := turn.place(image.Pt(0, y), size)
		next := turn.place(image.Pt(1, y), size)
		at := finest.PixOffset(start.X, start.Y)
		step := finest.PixOffset(next.X, next.Y) - at
		for ; len(line) > 0; line, at = line[4:], at+step {
			copy(finest.Pix[at:at+4], line)
		}
	}
	var gauge *inkGauge
	if pixels.model == inks {
		gauge = newInkGauge(p.Stored, turn, p.PerMM)
	}
	count := 1
	if pixels.model == lightness {
		count = min(runtime.GOMAXPROCS(0), size.Y)
	}
	err := inBands(count, p.Format, func(i int) error {
		band := newBand(p.Stored, size, i*size.Y/count, (i+1)*size.Y/count, emit)
		first, end := band.rows()
		return p.eachRow(ctx, pixels, first, end, func(line []byte) {
			switch pixels.model {
			case inks:
				gauge.add(line)
			case straight:
				p.Alpha = multiply(line) || p.Alpha
			}
			band.add(line)
		})
	})
	if err != nil {
		return err
	}
	if gauge != nil {
		p.Ink = gauge.result
	}
	p.Levels = Levels(finest)
	return nil
}

// inBands does each of count bands, all side by side, and returns the error of the first
// that failed.
func inBands(count int, format string, do func(i int) error) error {
	errs := make([]error, count)
	var all sync.WaitGroup
	for i := range count {
		all.Go(func() {
			defer contain(format, &errs[i])
			errs[i] = do(i)
		})
	}
	all.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// eachRow goes over the rows from first up to end until ctx ends.
func (p *Picture) eachRow(ctx context.Context, pixels samples, first, end int, do func(line []byte)) error {
	line := make([]byte, 4*p.Stored.X)
	for y := first; y < end; y++ {
		if err := stopped(ctx, p.Format); err != nil {
			return err
		}
		if err := pixels.row(y, line); err != nil {
			if stop := stopped(ctx, p.Format); stop != nil {
				return stop
			}
			return damaged(p.Format, err)
		}
		do(line)
	}
	return nil
}

// screen returns what turns a row of mean samples to premultiplied RGBA.
func screen(m model) func(line []byte) {
	switch m {
	case inks:
		table := ink.NewTable()
		return func(line []byte) { inksToRGB(table, line) }
	case lightness:
		return lightnessToRGB
	}
	return func([]byte) {}
}

// Levels returns the picture and ever smaller ones, each half as wide and high as the one
// before, each pixel the mean of the area that it covers, down to 64 pixels.
func Levels(finest *image.RGBA) []*image.RGBA {
	const smallest = 64 // pixels
	list := []*image.RGBA{finest}
	for {
		last := list[len(list)-1]
		size := last.Rect.Size()
		if max(size.X, size.Y) <= smallest {
			return list
		}
		half := image.Pt((size.X+1)/2, (size.Y+1)/2)
		next := image.NewRGBA(image.Rectangle{Max: half})
		list = append(list, next)
		if size == half.Mul(2) {
			halve(next, last)
			continue
		}
		reduced := newReducer(size, half, func(y int, line []byte) { copy(next.Pix[y*next.Stride:], line) })
		for y := range size.Y {
			reduced.add(last.Pix[y*last.Stride:][:4*size.X])
		}
	}
}

// halve makes each pixel the mean of four, as a reducer does, only faster.
func halve(next, last *image.RGBA) {
	const half = 0x0002_0002_0002_0002
	at := func(row []byte, x int) uint64 { return spread(binary.LittleEndian.Uint32(row[x:])) }
	for y := range next.Rect.Dy() {
		line := next.Pix[y*next.Stride:][:4*next.Rect.Dx()]
		upper, lower := last.Pix[2*y*last.Stride:][:2*len(line)], last.Pix[(2*y+1)*last.Stride:][:2*len(line)]
		for x := 0; x < len(line); x += 4 {
			sum := at(upper, 2*x) + at(upper, 2*x+4) + at(lower, 2*x) + at(lower, 2*x+4) + half
			binary.LittleEndian.PutUint32(line[x:], pack(sum>>2&laneMask))
		}
	}
}
