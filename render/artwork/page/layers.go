package page

import "gussetwright/render/pdf/object"

// layers tells which optional content is hidden when the file is opened (ISO
// 32000-1, 8.11). What a reader changes by itself for the screen or for print is left
// aside, since a press file has the one state.
type layers struct {
	file *source
	off  map[object.Reference]bool
	base bool // hidden unless said otherwise
	on   map[object.Reference]bool
	// left is how many more rules may be looked at: rules can share others, so that
	// following them all might never end.
	left *int
}

func newLayers(s *source) layers {
	left := mostRules
	l := layers{file: s, off: map[object.Reference]bool{}, on: map[object.Reference]bool{}, left: &left}
	usual := s.dict(s.dict(s.dict(s.trailer.Get("Root")).Get("OCProperties")).Get("D"))
	l.base = s.name(usual.Get("BaseState")) == "OFF"
	for key, set := range map[object.Name]map[object.Reference]bool{"OFF": l.off, "ON": l.on} {
		for _, group := range s.array(usual.Get(key)) {
			if number, is := group.(object.Reference); is {
				set[number] = true
			}
		}
	}
	return l
}

// is tells whether an object is a layer, or a rule that combines some.
func (l layers) is(o object.Object) bool {
	kind := l.file.name(l.file.dict(o).Get("Type"))
	return kind == "OCG" || kind == "OCMD"
}

// hidden tells whether content that belongs to the layer or rule is hidden.
func (l layers) hidden(o object.Object) bool { return l.hiddenAt(o, 0) }

func (l layers) hiddenAt(o object.Object, depth int) bool {
	if o == nil || depth > deepestTree {
		return false
	}
	d := l.file.dict(o)
	if l.file.name(d.Get("Type")) == "OCMD" {
		return l.ruledOut(d, depth+1)
	}
	number, is := o.(object.Reference)
	switch {
	case !is || !l.meantForView(d):
		return false
	case l.off[number]:
		return true
	}
	return l.base && !l.on[number]
}

// meantForView tells whether a layer is of the kind that can be hidden from view.
func (l layers) meantForView(d object.Dict) bool {
	intents := l.file.each(d.Get("Intent"))
	for _, intent := range intents {
		if n := l.file.name(intent); n == "View" || n == "All" {
			return true
		}
	}
	return len(intents) == 0
}

// ruledOut tells whether a rule over several layers hides its content.
func (l layers) ruledOut(d object.Dict, depth int) bool {
	if rule := l.file.array(d.Get("VE")); len(rule) > 0 {
		return !l.holds(rule, depth)
	}
	groups := l.file.each(d.Get("OCGs"))
	if one, is := d.Get("OCGs").(object.Reference); is && len(l.file.array(one)) == 0 {
		groups = object.Array{one}
	}
	shown, hidden := 0, 0
	for _, group := range groups {
		switch {
		case len(l.file.dict(group)) == 0: // it was deleted
		case l.hiddenAt(group, depth+1):
			hidden++
		default:
			shown++
		}
	}
	if shown+hidden == 0 {
		return false
	}
	switch l.file.name(d.Get("P")) {
	case "AllOn":
		return hidden > 0
	case "AnyOff":
		return hidden == 0
	case "AllOff":
		return shown > 0
	}
	return shown == 0
}

// holds tells whether an expression over layers is true (8.11.2.2).
func (l layers) holds(o object.Object, depth int) bool {
	rule, is := l.file.resolve(o).(object.Array)
	if !is {
		return !l.hiddenAt(o, depth+1)
	}
	if *l.left--; *l.left < 0 || len(rule) == 0 || depth > deepestTree {
		return true
	}
	terms, all := rule[1:], l.file.name(rule[0]) == "And"
	if l.file.name(rule[0]) == "Not" {
		return len(terms) == 0 || !l.holds(terms[0], depth+1)
	}
	for _, term := range terms {
		if l.holds(term, depth+1) != all {
			return !all
		}
	}
	return all
}
