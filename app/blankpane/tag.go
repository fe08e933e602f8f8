package blankpane

import (
	"fyne.io/fyne/v2"

	"gussetwright/geometry"
)

// atPoint returns the place of a caption to the lower right of a point, or on its
// other sides where there is no room.
func atPoint(at geometry.Vec2, room fyne.Size) func(fyne.Size) fyne.Position {
	return func(own fyne.Size) fyne.Position {
		return fyne.NewPos(besideWithin(at.X, own.Width, room.Width), besideWithin(at.Y, own.Height, room.Height))
	}
}

// besideWithin returns where something of a length begins along one side: after the
// point, before it where that is not inside the room, and inside it in any case.
func besideWithin(at float64, length, room float32) float32 {
	start := float32(at) + beside
	if start+length > room {
		start = float32(at) - beside - length
	}
	return max(min(start, room-length), 0)
}
