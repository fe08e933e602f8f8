package solid_test

import "gussetwright/geometry"

func geometryVec(x, y float64) geometry.Vec2 { return geometry.Vec2{X: x, Y: y} }
