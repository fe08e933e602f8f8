package folding

import (
	"math"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
)

// Sight is how a stage is best looked at.
type Sight struct {
	// Camera looks from where the work is seen. Its zoom is 1.
	Camera solid.Camera
	// Near tells that only a part of the bag is looked at, see Part.
	Near bool
	// Cords tells that the cords are what the stage is about. Elsewhere they may leave
	// the picture.
	Cords bool
}

// The cameras of stages that the usual one does not show. Angles were chosen by looking.
var (
	// ontoBase looks down on the base of a tube that stands on its top. Seen flatter, or
	// from a corner, the slants of its flaps fall upright and level, and a closed base
	// looks like the inside of an open box.
	ontoBase = solid.Camera{Azimuth: 0.3, Elevation: 1.05, Zoom: 1}
	// intoTube looks through the open top of a tube that lies on its front, at the edge
	// along which the seam flap is glued.
	intoTube = solid.Camera{Azimuth: 0.3, Elevation: 0.25, Zoom: 1}
)

// SightOf returns how a stage of the lesson of a bag is best looked at; usual is where
// the stages are seen from that need no other.
func SightOf(laid *blank.Blank, stage *fold.Stage, usual solid.Camera) Sight {
	switch stage.Name {
	case "base-gussets", "base-front", "base-back":
		return Sight{Camera: ontoBase}
	case "seam":
		if laid.Spec.Body.Gusset > 0 {
			return Sight{Camera: intoTube, Near: laid.Seams == 1}
		}
	case "handle":
		return Sight{Camera: usual, Cords: true}
	}
	return Sight{Camera: usual}
}

// Of the part of a tube that is looked at while it is glued: shares of its width and of
// its length, from the edge of the seam and from its top.
const partAcross, partAlong = 0.62, 0.5

// Part returns the box around the part of a lying tube at which the seam flap is glued.
func Part(body *fold.Body) (least, greatest geometry.Vec3) {
	paper := *body
	paper.Cords = nil
	least, greatest = paper.Bounds()
	middle := (least.X + greatest.X) / 2
	aside, count := 0.0, 0.0 // where the flap is
	for i := range body.Facets {
		if strings.HasPrefix(body.Facets[i].Panel, "seam-flap") {
			for _, p := range body.Facets[i].Points {
				aside, count = aside+p.X, count+1
			}
		}
	}
	if wide := partAcross * (greatest.X - least.X); aside/max(count, 1) <= middle {
		greatest.X = least.X + wide
	} else {
		least.X = greatest.X - wide
	}
	greatest.Y = least.Y + partAlong*(greatest.Y-least.Y)
	return least, greatest
}

// Toward returns the camera a share of the way to another. Its zoom and shift are those
// of the first.
func Toward(from, to solid.Camera, share float64) solid.Camera {
	between := from
	between.Azimuth += share * math.Remainder(to.Azimuth-from.Azimuth, 2*math.Pi)
	between.Elevation += share * (to.Elevation - from.Elevation)
	return between
}
