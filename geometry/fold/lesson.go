package fold

import (
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// Lesson is how a bag is folded, stage by stage, from the flat blank to the standing
// bag and to the packed one. Facets are the same, in the same order, at every moment
// of all stages but the last.
type Lesson struct {
	Stages []Stage
	// Standing is the index of the stage at whose end the bag is that of Standing.
	Standing int
	// Foldable is the number of stages that can be folded. It is less than that of
	// all stages when the bag cannot be made or packed; Obstacle then says why.
	Foldable int
	Obstacle phrase.Phrase

	laid  *blank.Blank
	moves []move
	sunk  float64 // lowest height of the standing bag: layers of a leaning pinch base
	// packing is the motion of the last stage that was reckoned elsewhere; nil: the
	// stage is drawn as a sketch.
	packing func(moment float64) Body
}

// Stage is one step of the work: what moves, what is glued.
type Stage struct {
	Name    string        // stable, for programs, such as "turn-in"
	Title   phrase.Phrase // in few words
	Caption phrase.Phrase // what the hands do
	Tip     phrase.Phrase // empty where there is none, like Caution
	Caution phrase.Phrase
	Check   phrase.Phrase    // how to see that it is right
	Creases []Crease         // those that are folded in this stage
	Glue    []blank.GlueRole // the areas that are glued in it
	// Schematic tells that what is shown between the two ends of the stage is drawn
	// to make it understood: paper would bend or be pulled there in ways that are not
	// reckoned.
	Schematic bool
}

// Crease is a crease of a piece, or the part of one that is folded in a stage.
type Crease struct {
	Piece int // index into the pieces of the blank
	geometry.Edge
	Role blank.Role
	Fold blank.Fold // seen from the print side
}

// move is the motion of a stage.
type move struct {
	begin stance
	to    func(s *stance, moment float64)
	// The shifts along x and y that keep the middle of the paper in one place, at
	// the beginning and at the end.
	from, until geometry.Vec2
	packing     bool
}

// Fold returns the lesson of a bag.
func Fold(laid *blank.Blank) *Lesson {
	l := &Lesson{laid: laid}
	s := stance{tilt: quarter}
	if laid.Seams == 2 {
		s.apart = 1
	}
	for _, step := range stepsOf(laid) {
		stage := step.stage
		stage.Creases = creasesOf(laid, stage.Name)
		m := move{begin: s, to: step.to, packing: step.stage.Name == "packed"}
		if !m.packing {
			step.to(&s, 1)
			l.Standing = len(l.Stages)
		}
		l.Stages, l.moves = append(l.Stages, stage), append(l.moves, m)
	}
	l.keepInTheMiddle()
	l.stopAtObstacle()
	return l
}

// PackBy gives the last stage a motion that was reckoned, in the place of the sketch
// that a lesson has of its own. It does nothing where the bag is packed by folding
// alone. The lesson may then be asked for poses only as body may.
func (l *Lesson) PackBy(body func(moment float64) Body) {
	last := len(l.Stages) - 1
	if last < 0 || last >= l.Foldable || !l.moves[last].packing || !l.Stages[last].Schematic {
		return
	}
	l.packing, l.Stages[last].Schematic = body, false
}

// keepInTheMiddle makes the paper stay where the standing bag is, however far it
// spreads.
func (l *Lesson) keepInTheMiddle() {
	standing := l.at(l.Standing, 1, geometry.Vec2{})
	home := middleOf(standing)
	standing.Cords = nil
	least, _ := standing.Bounds()
	l.sunk = least.Z
	from := home.Sub(middleOf(l.at(0, 0, geometry.Vec2{})))
	for i := range l.moves[:l.Standing+1] {
		until := geometry.Vec2{}
		if l.after(i).tilt != 0 {
			until = home.Sub(middleOf(l.at(i, 1, geometry.Vec2{})))
		}
		l.moves[i].from, l.moves[i].until = from, until
		from = until
	}
}

// middleOf returns the middle of the paper seen from above.
func middleOf(body Body) geometry.Vec2 {
	body.Cords = nil
	least, greatest := body.Bounds()
	middle := least.Mid(greatest)
	return geometry.Vec2{X: middle.X, Y: middle.Y}
}

// after returns the stance at the end of a stage.
func (l *Lesson) after(stage int) stance {
	s := l.moves[stage].begin
	l.moves[stage].to(&s, 1)
	return s
}

// stopAtObstacle finds the first stage that the bag cannot be taken to.
func (l *Lesson) stopAtObstacle() {
	l.Foldable = len(l.Stages)
	for i := range l.Stages {
		if why := obstacle(l.laid, l.Stages[i].Name); !why.Empty() {
			l.Foldable, l.Obstacle = i, why
			return
		}
	}
}

// Pose returns the paper, cards and cords at a moment of a stage, 0 its beginning, 1
// its end; what lies beyond is taken as the nearest of them. A stage that cannot be
// folded shows the end of the last one that can.
func (l *Lesson) Pose(stage int, moment float64) Body {
	stage, moment = max(stage, 0), min(max(moment, 0), 1)
	if stage >= l.Foldable {
		stage, moment = l.Foldable-1, 1
	}
	m := &l.moves[stage]
	if m.packing && l.packing != nil {
		return l.packing(moment)
	}
	if m.packing {
		return packing(l.laid, moment)
	}
	shift := m.from.Add(m.until.Sub(m.from).Scale(moment))
	return l.at(stage, moment, shift)
}

// at returns the body at a moment of a stage before the packing, moved over the ground.
func (l *Lesson) at(stage int, moment float64, shift geometry.Vec2) Body {
	s := l.moves[stage].begin
	l.moves[stage].to(&s, moment)
	body := folded(l.laid, s)
	if s.tilt != 0 || shift != (geometry.Vec2{}) {
		shift := geometry.Vec3{X: shift.X, Y: shift.Y, Z: l.sunk * max(1-s.tilt/quarter, 0)}
		body.lay(s.tilt, &l.laid.Spec.Body, shift)
	}
	return body
}

// lay tilts a body about the middle of the bag, puts it on the ground and shifts it
// from there.
func (b *Body) lay(tilt float64, body *bag.Body, shift geometry.Vec3) {
	middle, axis := geometry.Vec3{Y: body.Gusset / 2, Z: body.Height / 2}, geometry.Vec3{X: 1}
	lowest := math.Inf(1)
	turn := func(facets []Facet, paper bool) {
		for i := range facets {
			f := &facets[i]
			f.Pose = f.Pose.about(middle, axis, tilt)
			for c, corner := range f.Corners {
				f.Points[c] = f.Pose.At(corner)
				if paper {
					lowest = min(lowest, f.Points[c].Z)
				}
			}
		}
	}
	turn(b.Facets, true)
	turn(b.Cards, false)
	move := shift.Sub(geometry.Vec3{Z: lowest})
	for _, facets := range [][]Facet{b.Facets, b.Cards} {
		for i := range facets {
			f := &facets[i]
			f.Pose = f.Pose.Move(move)
			for c := range f.Points {
				f.Points[c] = f.Points[c].Add(move)
			}
		}
	}
	for i := range b.Cords {
		cord := &b.Cords[i]
		cord.Out = cord.Out.Turn(axis, tilt)
		path := slices.Clone(cord.Path)
		for k, p := range path {
			path[k] = middle.Add(p.Sub(middle).Turn(axis, tilt)).Add(move)
		}
		cord.Path = path
	}
}
