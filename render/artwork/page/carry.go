package page

import (
	"bytes"
	"compress/zlib"
	"errors"
	"slices"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// carrier takes objects over from a copy into objects of our own, each once, however
// they refer to each other.
type carrier struct {
	file     *source
	layers   layers
	made     map[object.Reference]*object.Indirect
	waiting  []object.Reference
	unpacked int // bytes of operators so far
	// resources of the page: forms and drawn fonts that bring none use them (ISO
	// 32000-1, 8.10.1 and 9.6.5), and must go on doing so on a page of another file.
	resources     *object.Indirect
	pageResources object.Dict
	inks          *Colours
	hidden        bool // something on a hidden layer was left out
	separate      bool // streams must not hold on to the copy
}

// leftBehind lists the entries of streams that are not taken along: what belongs to
// the structure of the other file, what programs noted for themselves, and what stands
// in other files. The length is written again.
var leftBehind = map[object.Name]bool{
	"OC": true, "StructParent": true, "StructParents": true, "PieceInfo": true, "Ref": true, "OPI": true,
	"Length": true, "F": true, "FFilter": true, "FDecodeParms": true,
}

// value takes over an object. What it refers to is taken over later, by finish.
func (c *carrier) value(o object.Object) object.Object {
	switch o := o.(type) {
	case object.Reference:
		return c.indirect(o)
	case object.Array:
		list := make(object.Array, len(o))
		for i := range o {
			list[i] = c.value(o[i])
		}
		return list
	case object.Dict:
		return c.dict(o)
	}
	return o
}

func (c *carrier) indirect(number object.Reference) *object.Indirect {
	if known, is := c.made[number]; is {
		return known
	}
	i := &object.Indirect{Value: object.Null{}}
	c.made[number] = i
	c.waiting = append(c.waiting, number)
	return i
}

// finish takes over everything that is referred to.
func (c *carrier) finish() error {
	for len(c.waiting) > 0 {
		if len(c.made) > mostObjects {
			return phrase.Errorf("the page needs more than %d objects; simplify the drawing, or turn it into a picture", mostObjects)
		}
		number := c.waiting[0]
		c.waiting = c.waiting[1:]
		o, err := c.file.object(number)
		if err != nil {
			return damaged(err)
		}
		if stream, is := o.(object.Plain); is {
			o, err = c.stream(stream)
		} else {
			o = c.value(o)
		}
		if err != nil {
			return err
		}
		c.made[number].Value = o
	}
	return nil
}

func (c *carrier) dict(d object.Dict) object.Object {
	switch c.file.name(d.Get("Type")) {
	case "Page", "Pages", "Catalog", "OCG", "OCMD", "Annot":
		return object.Null{} // nothing that is drawn refers to them
	}
	taken := c.entries(d)
	if c.file.name(d.Get("Subtype")) == "Type3" && d.Get("Resources") == nil {
		taken = append(taken, object.Entry{Key: "Resources", Value: c.resources})
	}
	return taken
}

func (c *carrier) entries(d object.Dict) object.Dict {
	taken := make(object.Dict, 0, len(d)+1)
	for _, e := range d {
		if !c.layers.is(e.Value) {
			taken = append(taken, object.Entry{Key: e.Key, Value: c.value(e.Value)})
		}
	}
	return taken
}

// nothing is drawn in place of what is hidden.
var nothing = object.Plain{Dict: object.Dict{
	{Key: "Type", Value: object.Name("XObject")},
	{Key: "Subtype", Value: object.Name("Form")},
	{Key: "BBox", Value: object.Numbers(0, 0, 0, 0)},
}}

func (c *carrier) stream(s object.Plain) (object.Object, error) {
	subtype := c.file.name(s.Dict.Get("Subtype"))
	if oc := s.Dict.Get("OC"); oc != nil && c.layers.hidden(oc) {
		c.hidden = true
		return nothing, nil
	}
	if subtype == "PS" { // a program for a printer
		return nothing, nil
	}
	isForm := subtype == "Form"
	if isForm || c.file.whole(s.Dict.Get("PatternType"), 0) == 1 {
		return c.form(s, isForm)
	}
	return object.Plain{Dict: c.head(s.Dict), Data: c.data(s.Data)}, nil
}

func (c *carrier) data(data []byte) []byte {
	if c.separate {
		return bytes.Clone(data)
	}
	return data
}

func (c *carrier) head(d object.Dict) object.Dict {
	return c.entries(drop(slices.Clone(d), leftBehind))
}

// drop takes entries out of a dictionary.
func drop(d object.Dict, keys map[object.Name]bool) object.Dict {
	kept := d[:0]
	for _, e := range d {
		if !keys[e.Key] {
			kept = append(kept, e)
		}
	}
	return kept
}

// form takes over a form or a pattern, whose operators may belong to layers.
func (c *carrier) form(s object.Plain, isForm bool) (object.Object, error) {
	head, own := c.head(s.Dict), c.file.dict(s.Dict.Get("Resources"))
	if own == nil && isForm {
		own = c.pageResources
		head = append(drop(head, map[object.Name]bool{"Resources": true}), object.Entry{Key: "Resources", Value: c.resources})
	}
	operators, err := c.unpack(s)
	if errors.Is(err, errUnpacked) {
		return nil, err
	}
	if err != nil { // no reader can draw it
		return object.Plain{Dict: head, Data: c.data(s.Data)}, nil
	}
	filtered, unchanged := filterContent(operators, c.layerIn(own), c.inks)
	if unchanged {
		return object.Plain{Dict: head, Data: c.data(s.Data)}, nil
	}
	return packed(drop(head, map[object.Name]bool{"Filter": true, "DecodeParms": true}), filtered), nil
}

func (c *carrier) unpack(s object.Plain) ([]byte, error) {
	data, err := c.file.unpack(s, mostContent-c.unpacked)
	c.unpacked += len(data)
	return data, err
}

// layerIn returns a function that looks a layer up in resources.
func (c *carrier) layerIn(resources object.Dict) func([]byte) (is, hidden bool) {
	properties := c.file.dict(resources.Get("Properties"))
	return func(property []byte) (is, hidden bool) {
		if len(property) == 0 || property[0] != '/' {
			return false, false
		}
		l := lexer{data: property}
		o := properties.Get(l.name(token{name, 0, len(property)}))
		if o == nil || !c.layers.is(o) {
			return false, false
		}
		hidden = c.layers.hidden(o)
		c.hidden = c.hidden || hidden
		return true, hidden
	}
}

// packed returns a stream that is compressed once, here, rather than every time that
// it is written.
func packed(head object.Dict, data []byte) object.Plain {
	var out bytes.Buffer
	compressor, _ := zlib.NewWriterLevel(&out, zlib.BestSpeed) // a level that there is
	compressor.Write(data)                                     // a buffer takes everything
	compressor.Close()
	return object.Plain{
		Dict: append(head, object.Entry{Key: "Filter", Value: object.Name("FlateDecode")}),
		Data: out.Bytes(),
	}
}
