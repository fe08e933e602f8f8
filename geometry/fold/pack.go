package fold

import "gussetwright/geometry/blank"

func packing(laid *blank.Blank, moment float64) Body { return Standing(laid) }
