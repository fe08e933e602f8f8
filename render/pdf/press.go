package pdf

import (
	"errors"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
	"gussetwright/render/pdf/profile"
)

// allowed refuses what PDF/X-4 does not allow within artwork (ISO 15930-7; from
// memory).
func allowed(d dict) error {
	return errors.Join(fontIsThere(d), packingIsAllowed(d), nothingForeign(d))
}

// fontIsThere refuses fonts whose letters are not in the file.
func fontIsThere(d dict) error {
	if value(d, "Type") != name("Font") {
		return nil
	}
	switch value(d, "Subtype") {
	case name("Type0"), name("Type3"): // made of other fonts, and of drawings
		return nil
	}
	descriptor, _ := value(d, "FontDescriptor").(dict)
	for _, program := range []name{"FontFile", "FontFile2", "FontFile3"} {
		if descriptor.Get(program) != nil {
			return nil
		}
	}
	called, _ := value(d, "BaseFont").(name)
	return phrase.Errorf("the font %s is not embedded", called)
}

func packingIsAllowed(d dict) error {
	filters, isList := value(d, "Filter").(array)
	if !isList {
		filters = array{value(d, "Filter")}
	}
	for _, filter := range filters {
		if object.Direct(filter) == name("LZWDecode") {
			return phrase.Errorf("a part of it is packed by LZW")
		}
	}
	return nil
}

// nothingForeign refuses what a press could not show the same everywhere.
func nothingForeign(d dict) error {
	switch {
	case value(d, "Subtype") == name("PS"):
		return phrase.Errorf("it holds PostScript")
	case d.Get("OPI") != nil:
		return phrase.Errorf("it stands for a picture in another file (OPI)")
	case d.Get("TR") != nil && value(d, "Type") == name("ExtGState"):
		return phrase.Errorf("it changes the tones of the press (TR)")
	}
	return nil
}

// assumeSRGB gives every RGB colour in artwork that does not say which RGB it is the
// profile of sRGB. PDF/X-4 asks for that where the press prints in CMYK. A default
// has to stand in the resources of each form, since those of the page do not reach
// into it (ISO 32000-1, 8.6.5.6).
func (f *forms) assumeSRGB() {
	space := &object.Indirect{Value: array{name("ICCBased"), &object.Indirect{Value: stream{dict{{"N", integer(3)}}, profile.SRGB()}}}}
	f.numbering.Change = func(d dict) dict {
		resources, hasResources := value(d, "Resources").(dict)
		if !hasResources {
			return d
		}
		spaces, _ := value(resources, "ColorSpace").(dict)
		if spaces.Get("DefaultRGB") != nil {
			return d
		}
		spaces = with(spaces, "DefaultRGB", space)
		return with(d, "Resources", with(resources, "ColorSpace", spaces))
	}
}

// with returns a copy of the dictionary in which the key has the value.
func with(d dict, key name, value object.Object) dict {
	var copied dict
	for _, e := range d {
		if e.Key != key {
			copied = append(copied, e)
		}
	}
	return append(copied, entry{key, value})
}
