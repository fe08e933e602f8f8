package gang

import (
	"context"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// ticks is how many units of whole-number lengths make a millimetre, so that layouts
// are compared exactly. What is rounded away stays far below geometry.Tolerance.
const ticks = 1e9

func toTicks(length float64) int64 { return int64(math.Round(length * ticks)) }

// problem is a job in whole numbers. Every piece has grown by half of its least
// distance to its neighbours on all sides, and so has the room: grown pieces may touch.
type problem struct {
	sheet         bag.Sheet
	items         []Item
	demand        []int // pieces of each item
	usable        geometry.Rect
	corner        geometry.Vec2 // of the grown room
	width, height int64         // of the grown room
	half          []float64     // by how much each item has grown, in mm
	// exact tells that grown pieces may lie exactly where pieces may. With bleeds that
	// differ they keep farther apart than they must, and a search proves nothing.
	exact bool
	modes []*mode
	pure  []*pattern // the best form of each item alone
	work  int        // places and counts that may still be tried
}

// shape is a piece that lies turned by 0 or 90, grown, in ticks.
type shape struct {
	turn          int
	width, height int64
}

// lie is an item in one of its turns.
type lie struct{ item, turn int }

// mode is one way in which the grain lets the pieces of a form lie.
type mode struct {
	fibres bag.Grain // of the sheet, where a piece asks for it
	shapes [][]shape // of each item, one or two
	most   []int     // pieces of each item that no sheet passes
	lies   []lie
	limits []limit // of lies
	rough  []limit // of items
	x, y   axis    // of the room, where the problem is exact
	memory
}

// newProblem lays each item alone and sets the room up.
func newProblem(ctx context.Context, s bag.Sheet, items []Item) (*problem, error) {
	p := &problem{sheet: s, items: items, exact: true, demand: make([]int, len(items)), half: make([]float64, len(items)), pure: make([]*pattern, len(items))}
	for i := range items {
		p.demand[i] = items[i].Bags * items[i].perBag()
		p.half[i] = max(s.Gap/2, items[i].Piece.Bleed)
	}
	for _, turns := range p.turnsOfModes() {
		m, err := p.newMode(ctx, turns)
		if err != nil {
			return nil, err
		}
		p.modes = append(p.modes, m)
	}
	for i, pure := range p.pure {
		if pure == nil {
			plan := sheet.Lay(s, items[i].Piece)
			return nil, unfit(s, &items[i], &plan)
		}
	}
	p.setRoom()
	for _, m := range p.modes {
		p.addShapes(m)
		p.setLimits(m)
		p.dropShapes(m)
	}
	return p, nil
}

// usableOf returns what the box of an item may cover.
func (p *problem) usableOf(i int) geometry.Rect {
	plan := sheet.Lay(p.sheet, sheet.Piece{Bleed: p.items[i].Piece.Bleed})
	return plan.Usable
}

// setRoom makes the room in which every grown piece may lie anywhere.
func (p *problem) setRoom() {
	var room geometry.Rect
	for i := range p.items {
		usable := p.usableOf(i)
		grown := usable.Inset(-p.half[i])
		if i == 0 {
			room, p.usable = grown, usable
			continue
		}
		p.usable.Min.X, p.usable.Min.Y = min(p.usable.Min.X, usable.Min.X), min(p.usable.Min.Y, usable.Min.Y)
		p.usable.Max.X, p.usable.Max.Y = max(p.usable.Max.X, usable.Max.X), max(p.usable.Max.Y, usable.Max.Y)
		if far(room.Min, grown.Min) || far(room.Max, grown.Max) || (p.half[i] > p.sheet.Gap/2) != (p.half[0] > p.sheet.Gap/2) {
			p.exact = false
		}
		room.Min.X, room.Min.Y = max(room.Min.X, grown.Min.X), max(room.Min.Y, grown.Min.Y)
		room.Max.X, room.Max.Y = min(room.Max.X, grown.Max.X), min(room.Max.Y, grown.Max.Y)
	}
	const slack = geometry.Tolerance / 2
	p.corner = room.Min
	p.width, p.height = toTicks(room.Width()+slack), toTicks(room.Height()+slack)
}

func far(a, b geometry.Vec2) bool { return a.Sub(b).Length() > geometry.Tolerance/4 }

// place returns where a piece lies on the sheet.
func (p *problem) place(c cell) Placed {
	return Placed{c.item, sheet.Placement{
		X: p.corner.X + p.half[c.item] + float64(c.x)/ticks, Y: p.corner.Y + p.half[c.item] + float64(c.y)/ticks, Turn: c.turn,
	}}
}
