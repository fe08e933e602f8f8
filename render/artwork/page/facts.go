package page

import (
	"maps"
	"slices"
	"strings"

	"gussetwright/render/pdf/object"
)

// Font is a font that the page names.
type Font struct {
	Name     string // without the mark of a subset
	Embedded bool
}

// Colours tells which kinds of ink the page chooses, as far as its operators and its
// resources say so. A picture whose own file names the colours (JPEG 2000) is not
// counted.
type Colours struct {
	Grey, RGB, CMYK, Lab bool
	Spots                []string // in the order of the alphabet
}

// device notes a colour space by its name.
func (c *Colours) device(name string) {
	switch name {
	case "DeviceGray", "CalGray", "G":
		c.Grey = true
	case "DeviceRGB", "CalRGB", "RGB":
		c.RGB = true
	case "DeviceCMYK", "CMYK":
		c.CMYK = true
	case "Lab":
		c.Lab = true
	}
}

// facts is what the objects of a page tell about it.
type facts struct {
	seen         map[*object.Indirect]bool
	waiting      []object.Object
	inks         *Colours
	fonts        map[string]bool // embedded
	spots        map[string]bool
	transparency bool
	overprint    bool
}

// look goes through all that a form refers to.
func look(form *object.Form, inks *Colours) *facts {
	f := &facts{seen: map[*object.Indirect]bool{}, inks: inks, fonts: map[string]bool{}, spots: map[string]bool{}}
	f.transparency = form.Group != nil
	for f.add(form.Resources); len(f.waiting) > 0; {
		o := f.waiting[0]
		f.waiting = f.waiting[1:]
		f.object(o)
	}
	inks.Spots = slices.Sorted(maps.Keys(f.spots))
	return f
}

func (f *facts) list() []Font {
	var list []Font
	for _, name := range slices.Sorted(maps.Keys(f.fonts)) {
		list = append(list, Font{name, f.fonts[name]})
	}
	return list
}

// add puts an object on the list of those to look at, once.
func (f *facts) add(o object.Object) {
	if i, is := o.(*object.Indirect); is {
		if f.seen[i] {
			return
		}
		f.seen[i] = true
		o = i.Value
	}
	switch o.(type) {
	case object.Array, object.Dict, object.Plain:
		f.waiting = append(f.waiting, o)
	}
}

func (f *facts) object(o object.Object) {
	switch o := o.(type) {
	case object.Array:
		for _, v := range o {
			f.add(v)
		}
	case object.Dict:
		f.dict(o)
	case object.Plain:
		f.dict(o.Dict)
	}
}

func (f *facts) dict(d object.Dict) {
	f.state(d)
	if follow(d.Get("Type")) == object.Name("Font") {
		f.font(d)
	}
	for _, e := range d {
		switch e.Key {
		case "ColorSpace", "CS":
			f.spaces(e.Value)
		case "SMask", "Mask": // its grey is no ink
			f.transparency = f.transparency || e.Key == "SMask" && follow(e.Value) != object.Name("None")
			continue
		case "Group", "Parent":
			continue
		}
		f.add(e.Value)
	}
}

// state notes what a graphics state asks for (ISO 32000-1, 8.4.5).
func (f *facts) state(d object.Dict) {
	for _, key := range []object.Name{"ca", "CA"} {
		if n, is := follow(d.Get(key)).(numeral); is && !opaque(n) {
			f.transparency = true
		}
	}
	for _, key := range []object.Name{"OP", "op"} {
		if follow(d.Get(key)) == object.Boolean(true) {
			f.overprint = true
		}
	}
	mode := follow(d.Get("BM"))
	if list, is := mode.(object.Array); is && len(list) > 0 {
		mode = follow(list[0])
	}
	if name, is := mode.(object.Name); is && name != "Normal" && name != "Compatible" {
		f.transparency = true
	}
}

func opaque(n numeral) bool {
	return strings.TrimRight(strings.TrimPrefix(string(n), "+"), ".0") == "1"
}

// font notes the name of a font and whether its outlines come along.
func (f *facts) font(d object.Dict) {
	base, _ := follow(d.Get("BaseFont")).(object.Name)
	if list, is := follow(d.Get("DescendantFonts")).(object.Array); is && len(list) > 0 {
		d, _ = follow(list[0]).(object.Dict)
	} else if follow(d.Get("Subtype")) != object.Name("Type3") && follow(d.Get("CIDSystemInfo")) != nil {
		return // it was counted with the font that it is part of
	}
	descriptor, _ := follow(d.Get("FontDescriptor")).(object.Dict)
	embedded := follow(d.Get("Subtype")) == object.Name("Type3")
	for _, key := range []object.Name{"FontFile", "FontFile2", "FontFile3"} {
		_, is := follow(descriptor.Get(key)).(object.Plain)
		embedded = embedded || is
	}
	plain := string(base)
	if len(plain) > 7 && plain[6] == '+' {
		plain = plain[7:]
	}
	if plain == "" {
		if embedded {
			return // a font of drawings has no name
		}
		plain = "?"
	}
	before, known := f.fonts[plain]
	f.fonts[plain] = embedded && (before || !known)
}

// spaces notes the colours of a colour space, or of a dictionary of them.
func (f *facts) spaces(o object.Object) {
	switch o := follow(o).(type) {
	case object.Dict:
		for _, e := range o {
			f.space(e.Value, 0)
		}
	default:
		f.space(o, 0)
	}
}

func (f *facts) space(o object.Object, depth int) {
	if depth > 8 { // a space within a space within a space is the most that there is
		return
	}
	list, is := follow(o).(object.Array)
	if !is {
		n, _ := follow(o).(object.Name)
		f.inks.device(string(n))
		return
	}
	if len(list) == 0 {
		return
	}
	kind, _ := follow(list[0]).(object.Name)
	f.inks.device(string(kind))
	if len(list) < 2 {
		return
	}
	switch kind {
	case "ICCBased":
		f.profile(follow(list[1]))
	case "Indexed", "I", "Pattern":
		f.space(list[1], depth+1)
	case "Separation":
		f.spot(follow(list[1]))
	case "DeviceN":
		names, _ := follow(list[1]).(object.Array)
		for _, n := range names {
			f.spot(follow(n))
		}
	}
}

// profile notes the colours of an ICC profile, by how many there are.
func (f *facts) profile(o object.Object) {
	stream, _ := o.(object.Plain)
	switch follow(stream.Dict.Get("N")) {
	case numeral("1"):
		f.inks.Grey = true
	case numeral("3"):
		f.inks.RGB = true
	case numeral("4"):
		f.inks.CMYK = true
	}
}

func (f *facts) spot(o object.Object) {
	n, _ := o.(object.Name)
	switch n {
	case "Cyan", "Magenta", "Yellow", "Black":
		f.inks.CMYK = true
	case "None", "":
	default:
		f.spots[string(n)] = true
	}
}

// follow returns the object itself where an indirect one stands.
func follow(o object.Object) object.Object {
	for range deepestTree {
		i, is := o.(*object.Indirect)
		if !is {
			return o
		}
		o = i.Value
	}
	return nil
}
