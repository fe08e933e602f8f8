package pdf

import (
	"slices"

	"gussetwright/render/scene"
)

// stepState is the resource name of the graphics state of all steps.
const stepState name = "Step"

// layer is what the file holds once for each role.
type layer struct {
	role   scene.Role
	group  reference // optional content group
	colour reference // spot colour; 0 for artwork
}

// addLayers adds a layer for each role that has an item on any page, in drawing
// order, and in a template one for artwork.
func addLayers(f *file, pages []scene.Drawing, template bool) []layer {
	var layers []layer
	for _, role := range scene.AllRoles() {
		if wanted := template && role == scene.Artwork; !wanted && !slices.ContainsFunc(pages, func(page scene.Drawing) bool { return uses(page, role) }) {
			continue
		}
		added := layer{role: role, group: f.add(contentGroup(role.Style()))}
		if role != scene.Artwork {
			added.colour = f.add(spotColour(role))
		}
		layers = append(layers, added)
	}
	return layers
}

func uses(page scene.Drawing, role scene.Role) bool {
	return slices.ContainsFunc(page.Items, func(item scene.Item) bool { return item.Layer() == role })
}

// contentGroup declares the processing step of a layer in its GTS_Metadata, as
// ISO 19593-1 asks (keys as listed for GTS_ProcStepsGroup in the Arlington PDF
// Model of the PDF Association). A group without types must not name one.
func contentGroup(style scene.Style) dict {
	group := dict{{"Type", name("OCG")}, {"Name", text(style.Name)}}
	if style.Group == "" {
		return group
	}
	step := dict{{"GTS_ProcStepsGroup", name(style.Group)}}
	if style.Step != "" {
		step = append(step, entry{"GTS_ProcStepsType", name(style.Step)})
	}
	return append(group, entry{"GTS_Metadata", step})
}

// spotColour returns a plate of its own for the step, with the ink mix that a
// device without that plate shows. Marks are on all plates (ISO 32000-1, 8.6.6.4).
func spotColour(role scene.Role) array {
	style := role.Style()
	plate, proof := name(style.Name), style.Proof
	if role.OnEveryPlate() {
		plate = "All"
	}
	tint := dict{
		{"FunctionType", integer(2)},
		{"Domain", numbers(0, 1)},
		{"C0", numbers(0, 0, 0, 0)},
		{"C1", numbers(proof.C, proof.M, proof.Y, proof.K)},
		{"N", integer(1)},
	}
	return array{name("Separation"), plate, name("DeviceCMYK"), tint}
}

// overprint returns the graphics state of the steps: their plates leave all
// other plates as they are. Without it they knock out what lies beneath.
func overprint(on bool) dict {
	return dict{
		{"Type", name("ExtGState")},
		{"OP", boolean(on)},
		{"op", boolean(on)},
		{"OPM", integer(1)},
	}
}

// layerList returns the list of layers as programs show it, the highest first,
// all visible. There are no rules that switch layers by use, as PDF/X allows
// none (ISO 15930-7; from memory).
func layerList(layers []layer, template bool) dict {
	var groups, order, locked array
	for _, layer := range layers {
		groups = append(groups, layer.group)
		if template && layer.role != scene.Artwork {
			locked = append(locked, layer.group)
		}
	}
	for _, layer := range slices.Backward(layers) {
		order = append(order, layer.group)
	}
	shown := dict{
		{"Name", text("Processing steps")},
		{"ON", groups},
		{"Order", order},
	}
	if template {
		shown = append(shown, entry{"Locked", locked})
	}
	return dict{{"OCGs", groups}, {"D", shown}}
}
