package object

import "slices"

// Indirect is an object that stands in a file of its own account, once, however
// often it is used: every use holds the same pointer. Value may be set later, so
// that objects can refer to each other in a circle. Once a writer has seen it, it
// must not change any more.
type Indirect struct{ Value Object }

// AppendTo writes null: an Indirect has no number outside a file. Writers put a
// Reference in its place, see Numbering.
func (i *Indirect) AppendTo(file []byte) []byte { return Null{}.AppendTo(file) }

// Form is a drawing that can be placed in the page of any file, as often as wanted.
type Form struct {
	// Width and Height of the drawing in its own units; it lies between (0, 0) and
	// (Width, Height), y up. Nothing outside is shown.
	Width, Height float64
	Content       []byte // operators
	Resources     Dict   // what the operators name; shared things are *Indirect
	// Group is the transparency group that the drawing asks for, or nil.
	Group Dict
}

// XObject returns the form as an object that a page can name in its resources.
func (f *Form) XObject() *Indirect {
	head := Dict{
		{"Type", Name("XObject")},
		{"Subtype", Name("Form")},
		{"BBox", Numbers(0, 0, f.Width, f.Height)},
		{"Resources", f.Resources},
	}
	if f.Group != nil {
		head = append(head, Entry{"Group", f.Group})
	}
	return &Indirect{Stream{head, f.Content}}
}

// Direct returns the object that an Indirect stands for, and every other as it is.
func Direct(o Object) Object {
	for range mostSteps {
		i, isIndirect := o.(*Indirect)
		if !isIndirect {
			return o
		}
		o = i.Value
	}
	return Null{}
}

// mostSteps is how far Direct follows, so that it leaves a circle again.
const mostSteps = 32

// Numbering replaces each Indirect within an object by the number that a file gives
// it. Numbers are given in the order in which the objects are met, so the same
// objects get the same numbers every time.
type Numbering struct {
	// Reserve takes the next number of the file; Set gives it its object.
	Reserve func() Reference
	Set     func(Reference, Object)
	// Change returns what stands in place of a dictionary; nil leaves all as they are.
	Change  func(Dict) Dict
	numbers map[*Indirect]Reference
}

// Place returns the object with references in place of every Indirect, having set
// those which the file did not hold yet.
func (n *Numbering) Place(o Object) Object {
	switch o := o.(type) {
	case *Indirect:
		return n.reference(o)
	case Array:
		placed := slices.Clone(o)
		for i := range placed {
			placed[i] = n.Place(placed[i])
		}
		return placed
	case Dict:
		return n.dict(o)
	case Stream:
		return Stream{n.dict(o.Dict), o.Data}
	case Plain:
		return Plain{n.dict(o.Dict), o.Data}
	case nil:
		return Null{}
	}
	return o
}

func (n *Numbering) dict(d Dict) Dict {
	if n.Change != nil {
		d = n.Change(d)
	}
	placed := slices.Clone(d)
	for i := range placed {
		placed[i].Value = n.Place(placed[i].Value)
	}
	return placed
}

func (n *Numbering) reference(i *Indirect) Reference {
	if number, known := n.numbers[i]; known {
		return number
	}
	if n.numbers == nil {
		n.numbers = map[*Indirect]Reference{}
	}
	number := n.Reserve()
	n.numbers[i] = number
	n.Set(number, n.Place(i.Value))
	return number
}
