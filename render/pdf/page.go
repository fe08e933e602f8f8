package pdf

import (
	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// pointsPerMM is the number of points in a millimetre: 72 in an inch of 25.4 mm.
const pointsPerMM = 72 / 25.4

// shared is what all pages of a drawing use.
type shared struct {
	layers    []layer
	stepState reference
	forPress  bool // the file declares PDF/X-4
	template  bool // every page has an artwork layer, if an empty one
}

// addPage adds the page of a drawing with its content. Each page names only the
// layers, plates, faces and artwork that it uses.
func (d *draft) addPage(drawing scene.Drawing, shared shared) reference {
	c := content{fonts: d.fonts, forms: d.forms, parts: d.parts}
	c.scale(drawing.Media.Min)
	var groups, colours dict
	for _, layer := range shared.layers {
		items := itemsOf(drawing, layer.role)
		if len(items) == 0 && !(shared.template && layer.role == scene.Artwork) {
			continue
		}
		c.layer(layer.role, items)
		key := name(layer.role.Style().Name)
		groups = append(groups, entry{key, layer.group})
		if layer.colour != 0 {
			colours = append(colours, entry{key, layer.colour})
		}
	}
	resources := dict{
		{"ColorSpace", colours},
		{"ExtGState", append(dict{{stepState, shared.stepState}}, c.states...)},
		{"Font", d.fonts.used(&d.file, c.lettered)},
		{"Properties", groups},
	}
	if len(c.placed) > 0 {
		resources = append(resources, entry{"XObject", c.placed})
	}
	bleed := clip(drawing.Bleed, drawing.Media)
	page := dict{
		{"Type", name("Page")},
		{"Parent", d.tree},
		{"MediaBox", box(drawing.Media, drawing.Media.Min)},
		{"BleedBox", box(bleed, drawing.Media.Min)},
		{"TrimBox", box(clip(drawing.Trim, bleed), drawing.Media.Min)},
		{"Resources", resources},
		{"Contents", d.draw(c.data)},
	}
	if shared.forPress && c.blends {
		page = append(page, entry{"Group", blendInCMYK})
	}
	return d.add(page)
}

// blendInCMYK is the transparency group of a page for the press: what shines
// through is mixed as ink, not as light (ISO 32000-1, 11.6.6).
var blendInCMYK = dict{{"Type", name("Group")}, {"S", name("Transparency")}, {"CS", name("DeviceCMYK")}}

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
