// Package product proposes the size of a bag from what is to go into it, and finds
// the usual size that comes nearest.
//
// Ease, headroom and the order of preference are common practice of bag makers
// without a published source.
package product

import (
	"slices"

	"gussetwright/geometry/bag"
)

// Product is what goes into the bag.
type Product bag.Product

// As returns the product as one of another kind, with the ease and the headroom
// that are usual for it.
func (p Product) As(kind bag.ProductKind) Product {
	spec := bag.Spec{Product: bag.Product(p)}
	spec.Product.Kind = kind
	spec.Derive(func(string) bool { return false })
	p = Product(spec.Product)
	p.Width = min(p.Width, p.Widest())
	return p
}

// Widest returns the most that the product may be wide, in mm: a bottle is as deep as
// it is wide.
func (p Product) Widest() float64 {
	path := "product.width_mm"
	if p.Kind == bag.ProductBottle {
		path = "product.depth_mm"
	}
	field, _ := bag.FieldAt(path)
	return field.Most
}

// Volume returns the space that the product takes, in litres.
func (p Product) Volume() float64 {
	width, depth := p.foot()
	return width * depth * p.Height / 1e6
}

// foot returns what the product stands on, the longer side first.
func (p Product) foot() (longer, shorter float64) {
	if p.Kind == bag.ProductBottle {
		return p.Width, p.Width
	}
	return max(p.Width, p.Depth), min(p.Width, p.Depth)
}

// Needs returns the smallest bag that the product slides into.
func (p Product) Needs() Size {
	longer, shorter := p.foot()
	return Size{longer + p.Ease, shorter + p.Ease, p.Height + p.Headroom}
}

// Size is the size of a bag: face × gusset × standing height, in millimetres.
type Size struct {
	Width  float64 `json:"width_mm"`
	Gusset float64 `json:"gusset_mm"`
	Height float64 `json:"height_mm"`
}

// Volume returns what a bag of this size holds, in litres.
func (s Size) Volume() float64 { return s.Width * s.Gusset * s.Height / 1e6 }

// Apply returns the bag in this size. Entries that had their usual value, such as
// holes half a face apart, keep to the rule and so change with it.
func (s Size) Apply(spec bag.Spec) bag.Spec {
	usual := spec
	usual.Derive(func(string) bool { return false })
	var own []string
	for _, field := range bag.Fields() {
		if field.Text(&spec) != field.Text(&usual) {
			own = append(own, field.Path)
		}
	}
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = s.Width, s.Gusset, s.Height
	spec.Derive(func(path string) bool { return slices.Contains(own, path) })
	return spec
}
