package pdf

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// pointsPerMM is the number of points in a millimetre: 72 in an inch of 25.4 mm.
const pointsPerMM = 72 / 25.4

// shared is what all pages of a document use.
type shared struct {
	tree      reference // parent of the pages
	layers    []layer
	stepState reference
	fonts     *fonts
}

// addPage adds the page of a drawing with its content. Each page names only the
// layers, plates and faces that it uses.
func addPage(f *file, drawing scene.Drawing, shared shared) reference {
	c := content{fonts: shared.fonts}
	c.scale(drawing.Media.Min)
	var groups, colours, letters dict
	for _, layer := range shared.layers {
		items := itemsOf(drawing, layer.role)
		if len(items) == 0 {
			continue
		}
		c.layer(layer.role, items)
		key := name(layer.role.Style().Name)
		groups = append(groups, entry{key, layer.group})
		if layer.colour != 0 {
			colours = append(colours, entry{key, layer.colour})
		}
	}
	for _, font := range shared.fonts {
		if slices.Contains(c.lettered, font) {
			letters = append(letters, entry{font.resource, font.reserve(f)})
		}
	}
	bleed := clip(drawing.Bleed, drawing.Media)
	return f.add(dict{
		{"Type", name("Page")},
		{"Parent", shared.tree},
		{"MediaBox", box(drawing.Media, drawing.Media.Min)},
		{"BleedBox", box(bleed, drawing.Media.Min)},
		{"TrimBox", box(clip(drawing.Trim, bleed), drawing.Media.Min)},
		{"Resources", dict{
			{"ColorSpace", colours},
			{"ExtGState", dict{{stepState, shared.stepState}}},
			{"Font", letters},
			{"Properties", groups},
		}},
		{"Contents", f.add(stream{nil, c.data})},
	})
}

// itemsOf returns the items of one role in the order of the drawing.
func itemsOf(drawing scene.Drawing, role scene.Role) []scene.Item {
	var items []scene.Item
	for _, item := range drawing.Items {
		if item.Layer() == role {
			items = append(items, item)
		}
	}
	return items
}

// clip cuts off what sticks out by less than a rounding error, which is all that
// check lets pass.
func clip(inner, outer geometry.Rect) geometry.Rect {
	return geometry.Rect{
		Min: geometry.Vec2{X: max(inner.Min.X, outer.Min.X), Y: max(inner.Min.Y, outer.Min.Y)},
		Max: geometry.Vec2{X: min(inner.Max.X, outer.Max.X), Y: min(inner.Max.Y, outer.Max.Y)},
	}
}

// box returns the rectangle in points from the corner of the page.
func box(r geometry.Rect, corner geometry.Vec2) array {
	low, high := r.Min.Sub(corner).Scale(pointsPerMM), r.Max.Sub(corner).Scale(pointsPerMM)
	return numbers(low.X, low.Y, high.X, high.Y)
}
