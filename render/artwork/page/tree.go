package page

import (
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// page returns a page of the copy, counted from 0, in the way that PDFium counts
// them: whatever has no children is one.
func (s *source) page(index int) (object.Dict, error) {
	root := s.dict(s.trailer.Get("Root"))
	w := walk{file: s, left: index, seen: map[object.Reference]bool{}}
	w.node(root.Get("Pages"), 0)
	if w.found == nil {
		return nil, phrase.Errorf("the page is not where the file says; save it again in the program that made it")
	}
	return w.found, nil
}

// walk looks for a page in the page tree.
type walk struct {
	file  *source
	left  int // pages before it
	seen  map[object.Reference]bool
	found object.Dict
}

func (w *walk) node(o object.Object, depth int) {
	if number, is := o.(object.Reference); is {
		if w.seen[number] {
			return
		}
		w.seen[number] = true
	}
	d := w.file.dict(o)
	children := w.file.array(d.Get("Kids"))
	if d.Get("Kids") == nil {
		if w.left == 0 {
			w.found = d
		}
		w.left--
		return
	}
	if depth > deepestTree {
		return
	}
	for _, child := range children {
		if w.node(child, depth+1); w.left < 0 {
			return
		}
	}
}
