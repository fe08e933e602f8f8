package pdf

import (
	"errors"

	"gussetwright/render/pdf/object"
)

// walk calls visit for each dictionary that a form holds or refers to, each object
// once, until one gives an error.
type walk struct {
	visit func(dict) error
	seen  map[any]bool // forms and indirect objects
}

func newWalk(visit func(dict) error) *walk { return &walk{visit, map[any]bool{}} }

func (w *walk) form(form *object.Form) error {
	if w.seen[form] {
		return nil
	}
	w.seen[form] = true
	return w.through(array{form.Resources, form.Group})
}

func (w *walk) through(o object.Object) error {
	switch o := o.(type) {
	case *object.Indirect:
		if w.seen[o] {
			return nil
		}
		w.seen[o] = true
		return w.through(o.Value)
	case array:
		for _, part := range o {
			if err := w.through(part); err != nil {
				return err
			}
		}
	case stream:
		return w.through(o.Dict)
	case plain:
		return w.through(o.Dict)
	case dict:
		if err := w.visit(o); err != nil {
			return err
		}
		for _, e := range o {
			if err := w.through(e.Value); err != nil {
				return err
			}
		}
	}
	return nil
}

// value returns what a key stands for.
func value(d dict, key name) object.Object { return object.Direct(d.Get(key)) }

// errBlends ends a walk at the first thing through which something shines.
var errBlends = errors.New("something shines through")

// blends tells whether something shines through parts of a form: opacity, blend modes,
// soft masks, transparency groups (ISO 32000-1, 11.6).
func blends(form *object.Form) bool {
	return newWalk(func(d dict) error {
		opaque := true
		for _, key := range []name{"ca", "CA"} {
			switch share := value(d, key).(type) {
			case number:
				opaque = opaque && share >= 1
			case integer:
				opaque = opaque && share >= 1
			}
		}
		switch mode := value(d, "BM").(type) {
		case name:
			opaque = opaque && (mode == "Normal" || mode == "Compatible")
		case array:
			opaque = false
		}
		switch value(d, "SMask").(type) {
		case stream, plain, dict:
			opaque = false
		}
		if !opaque || value(d, "S") == name("Transparency") {
			return errBlends
		}
		return nil
	}).form(form) != nil
}
