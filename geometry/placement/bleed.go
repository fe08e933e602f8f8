package placement

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// The bleed of a panel's artwork runs over cut edges always, and over an inner crease
// onto bare paper only, so that no white line shows where a fold lands a little off. It
// ends on the crease where there is beyond it
//
//   - artwork of that panel: two colours that meet at a crease meet on it, whichever
//     lies on top;
//   - artwork of the whole piece, beneath, or on top but showing through;
//   - the printed background.
//
// Where artwork begins a little off the crease the bleed ends where that begins; of a
// slot between base flaps it takes half. The seam flap counts as beyond a cut: it goes
// under the front, and colour that runs on beneath is what hides a seam.
//
// It is known here how far files reach, but not what is in them: artwork of a whole piece
// counts as ink also where its file leaves the paper bare.
//
// Common practice of printers, no published source.

// seamFlap is the column of the seam flap.
const seamFlap = "seam-flap"

// bleeds ends the bleed of everything that was placed where it must not go on.
type bleeds struct {
	blank      *blank.Blank
	covers     []cover
	background bool
}

// cover is what a placed file prints in its place.
type cover struct {
	*Placed
	ink     geometry.Rect // the part of the place that the file reaches
	onPanel bool
	clear   bool // what lies beneath can be seen through it
}

// clipAll sets the clip of everything that was placed.
func clipAll(b *blank.Blank, all []Placed) {
	l := bleeds{blank: b, covers: make([]cover, len(all)), background: b.Spec.Print.Background.Total() > 0}
	for i := range all {
		l.covers[i] = l.cover(&all[i])
	}
	for i := range all {
		all[i].Clip = l.clip(i)
	}
}

func (l *bleeds) cover(p *Placed) cover {
	art := &l.blank.Spec.Artwork[p.Index]
	c := cover{Placed: p, ink: p.Target, clear: art.Opacity < 100}
	_, c.onPanel = l.blank.Pieces[p.Piece].Panel(p.Place)
	switch {
	case art.Opacity == 0:
		c.ink = geometry.Rect{}
	case art.Repeat == bag.RepeatNone:
		c.ink = common(p.Target, p.At.Bounds(geometry.RectAt(0, 0, 1, 1)))
	}
	return c
}

// clip returns what is shown of what was placed: its place and the bleed round it.
func (l *bleeds) clip(own int) geometry.Rect {
	me := &l.covers[own]
	full := me.Target.Inset(-l.blank.Spec.Print.Bleed)
	if !me.onPanel {
		return full
	}
	edge := edges{place: me.Target, clip: full}
	piece := &l.blank.Pieces[me.Piece]
	for i := range piece.Panels {
		panel := &piece.Panels[i]
		beyond := common(full, panel.Box)
		if nothing(beyond) || panel.ID == me.Place || panel.Column == seamFlap {
			continue
		}
		if l.background {
			edge.end(beyond)
		}
		for k := range l.covers {
			if k != own && l.covers[k].inks(panel, me, k < own) {
				edge.end(common(l.covers[k].ink, beyond))
			}
		}
	}
	return edge.ended()
}

// inks tells whether artwork on a panel beyond a crease is not to be touched by the bleed
// of other artwork, beneath which it lies or not.
func (c *cover) inks(panel *blank.Panel, other *cover, beneath bool) bool {
	if c.Piece != other.Piece {
		return false
	}
	if c.onPanel {
		return c.Place == panel.ID
	}
	return beneath || c.clear
}
