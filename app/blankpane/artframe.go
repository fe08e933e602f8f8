package blankpane

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/placement"
)

// artFrame is the edge of a piece of artwork as it lies in one place of the blank, with
// handles at its corners and one above it. The coordinates are those of the piece.
type artFrame struct {
	*placement.Placed
	corners [4]geometry.Vec2 // of the file: lower left, lower right, upper right, upper left
	middle  geometry.Vec2    // that scale and turn leave in place
}

// unitSquare is the file before it is placed.
var unitSquare = [4]geometry.Vec2{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}

func newArtFrame(placed *placement.Placed, art *bag.Artwork) artFrame {
	f := artFrame{Placed: placed, middle: placed.Target.Center().Add(geometry.Vec2{X: art.X, Y: art.Y})}
	for i, corner := range unitSquare {
		f.corners[i] = placed.At.At(corner)
	}
	return f
}

// artFrames returns the frames of the artwork that is being placed; none while the bag
// cannot be drawn and an older one is seen.
func (p *Pane) artFrames() []artFrame {
	snapshot, index := p.state.Snapshot, p.look.Artwork()
	if index < 0 || index >= len(snapshot.Spec.Artwork) || p.state.Err != nil {
		return nil
	}
	var frames []artFrame
	for i := range snapshot.Placed {
		if placed := &snapshot.Placed[i]; placed.Index == index {
			frames = append(frames, newArtFrame(placed, &snapshot.Spec.Artwork[index]))
		}
	}
	return frames
}

// handle is the part of a frame that can be gripped.
type handle int

const (
	noHandle handle = iota
	inside
	corner0 // and the three that follow
	_
	_
	_
	turning
)

// Sizes of the handles in pixels.
const (
	handleReach = 9  // in which a handle takes the pointer
	turnAway    = 28 // of the handle that turns from the frame
)

// artGrip is a handle of one frame of the artwork that is being placed.
type artGrip struct {
	frame  int
	handle handle
}

// onScreen returns the pixels of the corners of a frame.
func (p *Pane) onScreen(f *artFrame) (corners [4]geometry.Vec2) {
	for i := range f.corners {
		corners[i] = p.view.screen(p.desk.at(f.Piece, f.corners[i]))
	}
	return corners
}

// turner returns where the handle that turns is seen, and where its stem begins: in the
// middle of the upper side of the file.
func turner(corners [4]geometry.Vec2) (stem, knob geometry.Vec2) {
	stem = corners[2].Mid(corners[3])
	up := stem.Sub(corners[0].Mid(corners[1])).Unit()
	return stem, stem.Add(up.Scale(turnAway))
}

// artAt returns what a pointer takes hold of.
func (s *surface) artAt(pixel geometry.Vec2) artGrip {
	if s.measure != nil || s.keys[keyOfPanning] {
		return artGrip{}
	}
	frames := s.pane.artFrames()
	for i := range frames {
		corners := s.pane.onScreen(&frames[i])
		if _, knob := turner(corners); knob.Sub(pixel).Length() <= handleReach {
			return artGrip{i, turning}
		}
		for j, corner := range corners {
			if corner.Sub(pixel).Length() <= handleReach {
				return artGrip{i, corner0 + handle(j)}
			}
		}
	}
	piece, at := s.pane.desk.nearest(s.pane.view.desk(pixel))
	for i := range frames {
		if frames[i].Piece == piece && shows(frames[i].Placed, at) {
			return artGrip{i, inside}
		}
	}
	return artGrip{}
}

// shows tells whether artwork can be seen at a point.
func shows(placed *placement.Placed, at geometry.Vec2) bool {
	if !placed.Clip.Contains(at) {
		return false
	}
	if placed.Copies != nil {
		return true
	}
	back, possible := placed.At.Inverse()
	return possible && geometry.RectAt(0, 0, 1, 1).Contains(back.At(at))
}

// chooseArt chooses the topmost artwork at a pixel, while artwork is being placed.
func (s *surface) chooseArt(pixel geometry.Vec2) {
	piece, at := s.pane.desk.nearest(s.pane.view.desk(pixel))
	s.pane.ChooseArtworkAt(piece, at)
}

// ChooseArtworkAt chooses the topmost artwork that is seen at a point of a piece, while
// artwork is being placed. Where there is none the choice stays.
func (p *Pane) ChooseArtworkAt(piece int, at geometry.Vec2) {
	if p.look.Artwork() < 0 || p.state.Err != nil {
		return
	}
	placed := p.state.Snapshot.Placed
	for i := len(placed) - 1; i >= 0; i-- {
		if placed[i].Piece == piece && shows(&placed[i], at) {
			p.look.ChooseArtwork(placed[i].Index)
			return
		}
	}
}
