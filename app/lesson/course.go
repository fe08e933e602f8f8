package lesson

import (
	"math"
	"sync"

	"gussetwright/app/document"
	"gussetwright/geometry"
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
func (p place) moment() float64 { return p.share * p.share * (3 - 2*p.share) }

// course is the lesson of one bag with what its pictures need. It never changes and may
// be asked from several goroutines.
type course struct {
	snapshot *document.Snapshot
	*fold.Lesson
	creases [][]solid.Crease // by stage: all of them, those that are folded in it lit

	framing sync.Once
	boxes   []box // that the picture takes in, so many to a stage and one more
}

// box is a part of space.
type box struct{ least, greatest geometry.Vec3 }

func newCourse(snapshot *document.Snapshot) *course {
	c := &course{snapshot: snapshot, Lesson: packing.Lesson(&snapshot.Blank)}
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
	}
	return c
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

// perStage is the number of boxes to a stage.
const perStage = 8

// box returns what the picture takes in at a place.
func (c *course) box(p place) box {
	c.framing.Do(c.reckonBoxes)
	at := (float64(p.stage) + p.share) * perStage
	before := min(int(at), len(c.boxes)-1)
	after := min(before+1, len(c.boxes)-1)
	return c.boxes[before].toward(c.boxes[after], at-float64(before))
}

// frame returns the frame around a box.
func (b box) frame() solid.Frame {
	across := geometry.Vec2{X: b.greatest.X - b.least.X, Y: b.greatest.Y - b.least.Y}
	return solid.Frame{Middle: b.least.Mid(b.greatest), Radius: across.Length() / 2, Rise: (b.greatest.Z - b.least.Z) / 2}
}

// reckonBoxes finds boxes that hold all of the motion and change slowly: each is the
// mean of its neighbours once these were widened by theirs, so none leaves anything out.
func (c *course) reckonBoxes() {
	const reach = perStage * 3 / 4
	bounds := make([]box, 0, len(c.Stages)*perStage+1)
	for stage := range c.Stages {
		for i := range perStage {
			bounds = append(bounds, c.bounds(place{stage, float64(i) / perStage}))
		}
	}
	bounds = append(bounds, c.bounds(place{len(c.Stages) - 1, 1}))
	wide := overNeighbours(bounds, reach, func(near []box) box {
		all := near[0]
		for _, b := range near[1:] {
			all = all.union(b)
		}
		return all
	})
	c.boxes = overNeighbours(wide, reach, func(near []box) (mean box) {
		for _, b := range near {
			mean.least, mean.greatest = mean.least.Add(b.least), mean.greatest.Add(b.greatest)
		}
		share := 1 / float64(len(near))
		return box{mean.least.Scale(share), mean.greatest.Scale(share)}
	})
}

// overNeighbours replaces every box by what of makes of it and those up to reach away.
func overNeighbours(boxes []box, reach int, of func([]box) box) []box {
	var made []box
	for i := range boxes {
		made = append(made, of(boxes[max(i-reach, 0):min(i+reach+1, len(boxes))]))
	}
	return made
}

// bounds returns the box around everything that is seen at a place.
func (c *course) bounds(p place) box {
	body := c.body(p)
	least, greatest := body.Bounds()
	around := box{least, greatest}
	for i := range body.Cards {
		for _, corner := range body.Cards[i].Points {
			around = around.union(box{corner, corner})
		}
	}
	return around
}

func (b box) union(o box) box {
	return box{
		geometry.Vec3{X: min(b.least.X, o.least.X), Y: min(b.least.Y, o.least.Y), Z: min(b.least.Z, o.least.Z)},
		geometry.Vec3{X: max(b.greatest.X, o.greatest.X), Y: max(b.greatest.Y, o.greatest.Y), Z: max(b.greatest.Z, o.greatest.Z)},
	}
}

// toward returns the box a share of the way to another.
func (b box) toward(o box, share float64) box {
	mix := func(a, b geometry.Vec3) geometry.Vec3 { return a.Add(b.Sub(a).Scale(share)) }
	return box{mix(b.least, o.least), mix(b.greatest, o.greatest)}
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
