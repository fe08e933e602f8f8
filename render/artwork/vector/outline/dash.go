package outline

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/limits"
)

// mostDashes is how many dashes one part of a path may have before it is drawn
// solid, while a path could ask for billions.
const mostDashes = limits.DrawingDashes

// dash cuts a strand into its dashes and traces each.
func (t *Tracer) dash(s Strand) {
	period := 0.0
	for _, length := range t.Pen.Dashes {
		period += length
	}
	if total := s.Length(); len(s.Points) < 2 || period <= 0 || total/period*float64(len(t.Pen.Dashes)) > mostDashes {
		t.solid(s)
		return
	}
	d := dasher{pattern: t.Pen.Dashes, trace: t.solid}
	d.begin(t.Pen.Offset, period)
	d.run(s)
}

// Length returns the length of all lines of the strand.
func (s Strand) Length() float64 {
	length := 0.0
	for i := 1; i < len(s.Points); i++ {
		length += s.Points[i].Sub(s.Points[i-1]).Length()
	}
	if s.Closed {
		length += s.Points[0].Sub(s.Points[len(s.Points)-1]).Length()
	}
	return length
}

// dasher walks along a strand, laying down the pen and lifting it.
type dasher struct {
	pattern []float64
	trace   func(Strand)
	place   int     // in the pattern; even places are dashes if its length is even
	down    bool    // whether the pen is down
	left    float64 // of the current dash or gap
	now     Strand
	first   *Strand // the dash that begins a closed strand, kept to be joined with the last
}

func (d *dasher) begin(offset, period float64) {
	if len(d.pattern)%2 == 1 {
		period *= 2 // a pattern of odd length is run through twice
	}
	offset = math.Mod(offset, period)
	if offset < 0 {
		offset += period
	}
	d.place, d.down, d.left = 0, true, d.pattern[0]
	for offset >= d.left && offset > 0 {
		offset -= d.left
		d.turn()
	}
	d.left -= offset
}

// turn goes on to the next gap or dash.
func (d *dasher) turn() {
	d.place = (d.place + 1) % len(d.pattern)
	d.down = !d.down
	d.left = d.pattern[d.place]
}

func (d *dasher) run(s Strand) {
	wraps := s.Closed && d.down
	if d.down {
		d.now.add(s.Points[0], s.Smooth[0])
	}
	edges := len(s.Points) - 1
	if s.Closed {
		edges++
	}
	for i := range edges {
		j := (i + 1) % len(s.Points)
		d.edge(s.Points[i], s.Points[j], s.Smooth[j], wraps)
	}
	switch {
	case d.first == nil && wraps && d.down: // one dash all the way round
		d.trace(Strand{Points: s.Points, Smooth: s.Smooth, Closed: true, Drawn: true})
	case d.first == nil:
		d.lift(false)
	case d.down:
		for i, p := range d.first.Points {
			d.now.add(p, i > 0 && d.first.Smooth[i])
		}
		d.lift(false)
	default:
		d.trace(*d.first)
	}
}

func (d *dasher) edge(a, b geometry.Vec2, smooth, wraps bool) {
	length := b.Sub(a).Length()
	gone := 0.0
	for gone+d.left < length {
		gone += d.left
		at := a.Add(b.Sub(a).Scale(gone / length))
		if d.down {
			d.now.add(at, false)
			d.lift(wraps && d.first == nil)
		}
		d.turn()
		if d.down {
			d.now.add(at, false)
		}
	}
	d.left -= length - gone
	if d.down {
		d.now.add(b, smooth)
	}
}

// lift ends a dash. The one that began a closed strand is kept for the last.
func (d *dasher) lift(keep bool) {
	dash := d.now
	dash.Drawn = true
	d.now = Strand{}
	switch {
	case keep:
		d.first = &dash
	case len(dash.Points) > 0:
		d.trace(dash)
	}
}
