package lesson

import (
	"math"
	"sync"

	"gussetwright/app/document"
	"gussetwright/app/folding"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/packing"
	"gussetwright/render/solid"
)

// place is where the lesson stands: a stage, and the share of its motion that is done.
type place struct {
	stage int
	share float64
}

// moment eases the motion of a stage, so that it sets out and arrives softly.
func (p place) moment() float64 { return eased(p.share) }

// eased goes from 0 to 1 and rests at both ends.
func eased(share float64) float64 {
	share = min(max(share, 0), 1)
	return share * share * (3 - 2*share)
}

// course is the lesson of one bag with what its pictures need. It never changes and may
// be asked from several goroutines.
type course struct {
	snapshot *document.Snapshot
	*fold.Lesson
	creases [][]solid.Crease // by stage: all of them, those that are folded in it lit

	unprinted func() *document.Snapshot // the bag without artwork

	sights  []folding.Sight // by stage: how it is looked at
	framing sync.Once
	boxes   [][]box // that the picture takes in, by stage
}

func newCourse(snapshot *document.Snapshot) *course {
	c := &course{snapshot: snapshot, Lesson: packing.Lesson(&snapshot.Blank)}
	c.unprinted = sync.OnceValue(func() *document.Snapshot {
		spec := snapshot.Spec
		spec.Artwork = nil
		bare, err := document.Derive(spec)
		if err != nil {
			return snapshot // cannot be: it was drawn with artwork
		}
		return bare
	})
	var all []solid.Crease
	for i := range snapshot.Blank.Pieces {
		for _, line := range snapshot.Blank.Pieces[i].Lines {
			if line.Kind == blank.Crease {
				all = append(all, solid.Crease{Piece: i, Edge: line.Edge})
			}
		}
	}
	for i := range c.Stages {
		list := all[:len(all):len(all)]
		for _, crease := range c.Stages[i].Creases {
			list = append(list, solid.Crease{Piece: crease.Piece, Edge: crease.Edge, Lit: true})
		}
		c.creases = append(c.creases, list)
		c.sights = append(c.sights, folding.SightOf(&snapshot.Blank, &c.Stages[i], solid.Isometric))
	}
	return c
}

// shown returns the bag that pictures are of.
func (o *order) shown() *document.Snapshot {
	if o.bare {
		return o.course.unprinted()
	}
	return o.course.snapshot
}

// last returns the last stage that is reached by playing: the one that cannot be folded,
// where there is one.
func (c *course) last() int { return min(c.Foldable, len(c.Stages)-1) }

// stuck tells whether a stage cannot be folded.
func (c *course) stuck(stage int) bool { return stage >= c.Foldable }

// within returns the nearest place that there is. What cannot be folded has no motion.
func (c *course) within(p place) place {
	p.stage = min(max(p.stage, 0), len(c.Stages)-1)
	p.share = min(max(p.share, 0), 1)
	if c.stuck(p.stage) {
		p.share = 0
	}
	return p
}

// body returns the bag at a place.
func (c *course) body(p place) fold.Body { return c.Pose(p.stage, p.moment()) }

// areas returns the areas that are glued in a stage, with the pieces they are on.
func (c *course) areas(stage int) (areas []blank.GlueArea, pieces []int) {
	for i := range c.snapshot.Blank.Pieces {
		for _, area := range c.snapshot.Blank.Pieces[i].Glue {
			for _, role := range c.Stages[stage].Glue {
				if area.Role == role {
					areas, pieces = append(areas, area), append(pieces, i)
				}
			}
		}
	}
	return areas, pieces
}

// glued is how much of the glue of a stage is there, at least what shows where it goes.
func (p place) glued() float64 {
	const first, full = 0.45, 0.3
	return first + (1-first)*min(p.share/full, 1)
}

// nearStage returns the stage of another lesson with the name of one of this, or the
// nearest by its number.
func (c *course) nearStage(of *course, stage int) int {
	for i := range of.Stages {
		if of.Stages[i].Name == c.Stages[stage].Name {
			return i
		}
	}
	return min(stage, len(of.Stages)-1)
}

// whole is the place as one number: the stage and the share of it.
func (p place) whole() float64 { return float64(p.stage) + p.share }

// placeAt returns the place of such a number.
func placeAt(whole float64, stages int) place {
	stage := min(max(int(math.Floor(whole)), 0), stages-1)
	return place{stage, min(max(whole-float64(stage), 0), 1)}
}
