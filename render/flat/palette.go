package flat

import (
	"image/color"

	"gussetwright/render/scene"
)

// Palette is the colours of a picture. Dashes and lettering tell the roles apart
// without them.
type Palette struct {
	Ground color.NRGBA // round the paper
	Paper  color.NRGBA
	Shadow color.NRGBA // of the paper on the ground
	Glow   color.NRGBA // over a panel that is pointed at
	Halo   color.NRGBA // round lines and letters that would be lost in artwork; may be clear
	Ink    map[scene.Role]color.NRGBA
	Beyond color.NRGBA // ink of dimensions beyond the paper; clear where it is that of Ink
	Calm   bool        // letters get the halo on uneven ground too, however much they stand out
}

// Light returns the palette of files and of light windows.
func Light() *Palette {
	palette := &Palette{
		Ground: color.NRGBA{228, 223, 212, 255},
		Paper:  color.NRGBA{255, 255, 255, 255},
		Shadow: color.NRGBA{38, 35, 30, 56},
		Glow:   color.NRGBA{10, 120, 190, 30},
		Halo:   color.NRGBA{253, 252, 248, 225},
		Ink:    map[scene.Role]color.NRGBA{},
	}
	for _, role := range scene.Roles() {
		c := role.Style().Screen
		palette.Ink[role] = color.NRGBA{c.R, c.G, c.B, 255}
	}
	return palette
}

// Dark returns the palette of dark windows: the same hues on a dark ground.
func Dark() *Palette {
	return &Palette{
		Ground: color.NRGBA{27, 25, 23, 255},
		Paper:  color.NRGBA{52, 49, 45, 255},
		Shadow: color.NRGBA{0, 0, 0, 150},
		Glow:   color.NRGBA{110, 190, 255, 34},
		Ink: map[scene.Role]color.NRGBA{
			scene.Gluing:          {163, 174, 79, 255},
			scene.ContentArea:     {122, 173, 148, 255},
			scene.Bleed:           {230, 124, 166, 255},
			scene.Dimensions:      {174, 184, 196, 255},
			scene.Legend:          {226, 231, 236, 255},
			scene.Creasing:        {79, 203, 207, 255},
			scene.ReverseCreasing: {255, 163, 94, 255},
			scene.Punching:        {147, 170, 255, 255},
			scene.Cutting:         {214, 176, 240, 255},
		},
	}
}

// OnPrint returns the palette for paper in its own colour on dark ground: the inks for
// light paper, but for dimensions beyond it.
func OnPrint() *Palette {
	palette := Light()
	dark := Dark()
	palette.Ground, palette.Shadow = dark.Ground, dark.Shadow
	palette.Beyond = dark.Ink[scene.Dimensions]
	return palette
}

// WithoutHalo returns the palette for paper on which no line can be lost.
func (p *Palette) WithoutHalo() *Palette {
	plain := *p
	plain.Halo = color.NRGBA{}
	return &plain
}

// Faded returns the palette with all inks half way to the paper, for a drawing that
// is out of date.
func (p *Palette) Faded() *Palette {
	faded := *p.WithoutHalo() // faded lines stand out from nothing
	faded.Ink = make(map[scene.Role]color.NRGBA, len(p.Ink))
	half := func(a, b uint8) uint8 { return uint8((int(a) + int(b)) / 2) }
	mix := func(c, ground color.NRGBA) color.NRGBA {
		return color.NRGBA{half(c.R, ground.R), half(c.G, ground.G), half(c.B, ground.B), c.A}
	}
	for role, c := range p.Ink {
		faded.Ink[role] = mix(c, p.Paper)
	}
	faded.Beyond = mix(p.Beyond, p.Ground)
	return &faded
}

// Layers is the set of roles that are shown.
type Layers uint32

// AllLayers shows everything.
func AllLayers() Layers {
	var all Layers
	for _, role := range scene.Roles() {
		all = all.With(role, true)
	}
	return all
}

// Has tells whether a role is shown.
func (l Layers) Has(role scene.Role) bool { return l&(1<<role) != 0 }

// With returns the set with a role shown or not.
func (l Layers) With(role scene.Role, shown bool) Layers {
	if shown {
		return l | 1<<role
	}
	return l &^ (1 << role)
}
