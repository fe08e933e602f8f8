package vector

import (
	"slices"
	"strings"

	"gussetwright/render/artwork/vector/outline"
)

// style is how an element looks, with what it takes over from those around it.
type style struct {
	colour        Colour // what currentColor means
	colourOpacity float64
	fill, stroke  ask
	fillOpacity   float64
	strokeOpacity float64
	evenOdd       bool // of fills
	clipEvenOdd   bool // of clips
	width         length
	cap           outline.Cap
	join          outline.Join
	miterLimit    float64
	dashes        []length
	dashOffset    length
	hidden        bool
	font          float64 // the size of letters, px
	strokeFirst   bool
	marker        bool

	own
}

// own is the part of a style that an element does not take over.
type own struct {
	opacity      float64
	absent       bool // display: none
	clip         string
	mask, filter bool
	blends       bool
	origin       bool // of transformations
	transform    string
	overflow     bool // shown outside of a viewport
	constant     bool // strokes keep their width however they are stretched
	stop         ask
	stopOpacity  float64
}

// ask is a paint as a style asks for it.
type ask struct {
	kind    askKind
	colour  Colour
	opacity float64
	server  string // the id of what paints
	instead *ask   // where there is no such thing
}

type askKind uint8

const (
	askNone askKind = iota
	askColour
	askCurrent
	askServer
)

var black = ask{kind: askColour, opacity: 1}

// usualOwn is what elements have that say nothing.
var usualOwn = own{opacity: 1, stop: black, stopOpacity: 1}

// usual is the style of the root before it says anything.
func usual() style {
	return style{
		colourOpacity: 1, fill: black, fillOpacity: 1, strokeOpacity: 1,
		width: length{value: 1}, miterLimit: 4, font: usualFont, own: usualOwn,
	}
}

// properties are those that may be written as attributes and that mean anything here.
var properties = func() map[string]bool {
	list := []string{
		"color", "fill", "fill-opacity", "fill-rule", "stroke", "stroke-opacity", "stroke-width",
		"stroke-linecap", "stroke-linejoin", "stroke-miterlimit", "stroke-dasharray", "stroke-dashoffset",
		"opacity", "display", "visibility", "clip-path", "clip-rule", "mask", "filter", "overflow",
		"stop-color", "stop-opacity", "font-size", "paint-order", "vector-effect", "mix-blend-mode",
		"marker", "marker-start", "marker-mid", "marker-end", "transform-origin",
	}
	known := map[string]bool{}
	for _, name := range list {
		known[name] = true
	}
	return known
}()

// within returns the style of an element inside of one with the style s, and how
// many of its values make no sense.
func (s style) within(n *node) (inner style, broken int) {
	inner = s
	inner.own = usualOwn
	for _, property := range []string{"font-size", "color"} { // others are measured by them
		for _, d := range n.declared {
			if d.property == property && !inner.set(d.property, d.value, &s) {
				broken++
			}
		}
	}
	for _, d := range n.declared {
		if d.property != "font-size" && d.property != "color" && !inner.set(d.property, d.value, &s) {
			broken++
		}
	}
	return inner, broken
}

// set gives a property its value, and returns false if the value makes no sense.
// Properties that mean nothing here are left alone.
func (s *style) set(property, value string, outer *style) bool {
	switch strings.ToLower(value) {
	case "inherit":
		s.take(property, *outer)
		return true
	case "unset", "revert", "revert-layer":
		from := *outer
		from.own = usualOwn
		s.take(property, from)
		return true
	case "initial":
		s.take(property, usual())
		return true
	}
	if strings.HasPrefix(property, "stroke") {
		return s.setStroke(property, value)
	}
	if known, ok := s.setPaint(property, value); known {
		return ok
	}
	return s.setOther(property, strings.ToLower(value), value)
}

// setStroke sets how lines are drawn.
func (s *style) setStroke(property, value string) (ok bool) {
	switch property {
	case "stroke":
		return setAsk(&s.stroke, value)
	case "stroke-opacity":
		return setShare(&s.strokeOpacity, value)
	case "stroke-width":
		width, ok := parseLength(value)
		if ok = ok && width.value >= 0; ok {
			s.width = width
		}
		return ok
	case "stroke-linecap":
		return choose(&s.cap, value, []string{"butt", "round", "square"})
	case "stroke-linejoin":
		if value == "arcs" || value == "miter-clip" { // new kinds, which few programs draw
			value = "miter"
		}
		return choose(&s.join, value, []string{"miter", "round", "bevel"})
	case "stroke-miterlimit":
		limit, _, ok := numberOf(value)
		if ok = ok && limit >= 1; ok {
			s.miterLimit = min(limit, longestMiter)
		}
		return ok
	case "stroke-dasharray":
		return s.setDashes(value)
	case "stroke-dashoffset":
		offset, ok := parseLength(value)
		if ok {
			s.dashOffset = offset
		}
		return ok
	}
	return true
}

// longestMiter is the greatest limit: mitres of lines that turn back by less than a
// hundredth of a degree.
const longestMiter = 10_000

func (s *style) setDashes(value string) bool {
	if value == "none" {
		s.dashes = nil
		return true
	}
	var list []length
	for part := range strings.FieldsFuncSeq(value, func(r rune) bool { return r == ',' || strings.ContainsRune(blanks, r) }) {
		dash, ok := parseLength(part)
		if !ok || dash.value < 0 {
			return false
		}
		list = append(list, dash)
	}
	s.dashes = list
	return true
}

// setPaint sets what has to do with colour, and tells whether it knows the property.
func (s *style) setPaint(property, value string) (known, ok bool) {
	switch property {
	case "color":
		colour, opacity, ok := parseColour(value)
		if ok {
			s.colour, s.colourOpacity = colour, opacity
		}
		return true, ok || strings.EqualFold(value, "currentcolor")
	case "fill":
		return true, setAsk(&s.fill, value)
	case "fill-opacity":
		return true, setShare(&s.fillOpacity, value)
	case "stop-color":
		return true, setAsk(&s.stop, value)
	case "stop-opacity":
		return true, setShare(&s.stopOpacity, value)
	case "opacity":
		return true, setShare(&s.opacity, value)
	}
	return false, false
}

// setOther sets the rest; small is the value in small letters.
func (s *style) setOther(property, small, value string) bool {
	switch property {
	case "fill-rule":
		s.evenOdd = small == "evenodd"
	case "clip-rule":
		s.clipEvenOdd = small == "evenodd"
	case "display":
		s.absent = small == "none"
	case "visibility":
		s.hidden = small == "hidden" || small == "collapse"
	case "overflow":
		s.overflow = small == "visible" || small == "auto"
	case "vector-effect":
		s.constant = strings.Contains(small, "non-scaling-stroke")
	case "paint-order":
		stroke, fill := strings.Index(small, "stroke"), strings.Index(small, "fill")
		s.strokeFirst = stroke >= 0 && (fill < 0 || stroke < fill)
	case "clip-path":
		s.clip = value
	case "mask":
		s.mask = small != "none"
	case "filter":
		s.filter = small != "none"
	case "mix-blend-mode":
		s.blends = small != "normal"
	case "marker", "marker-start", "marker-mid", "marker-end":
		s.marker = small != "none"
	case "transform-origin":
		s.origin = true
	case "transform":
		s.transform = value
	case "font-size":
		if size, ok := parseLength(value); ok && size.value >= 0 {
			s.font = size.in(s.font, s.font)
		}
	}
	return true
}

// take takes a property over from another style.
func (s *style) take(property string, from style) {
	switch property {
	case "color":
		s.colour, s.colourOpacity = from.colour, from.colourOpacity
	case "fill":
		s.fill = from.fill
	case "fill-opacity":
		s.fillOpacity = from.fillOpacity
	case "fill-rule":
		s.evenOdd = from.evenOdd
	case "clip-rule":
		s.clipEvenOdd = from.clipEvenOdd
	case "stroke":
		s.stroke = from.stroke
	case "stroke-opacity":
		s.strokeOpacity = from.strokeOpacity
	case "stroke-width":
		s.width = from.width
	case "stroke-linecap":
		s.cap = from.cap
	case "stroke-linejoin":
		s.join = from.join
	case "stroke-miterlimit":
		s.miterLimit = from.miterLimit
	case "stroke-dasharray":
		s.dashes = from.dashes
	case "stroke-dashoffset":
		s.dashOffset = from.dashOffset
	case "visibility":
		s.hidden = from.hidden
	case "font-size":
		s.font = from.font
	case "paint-order":
		s.strokeFirst = from.strokeFirst
	case "marker", "marker-start", "marker-mid", "marker-end":
		s.marker = from.marker
	default:
		s.takeOwn(property, from.own)
	}
}

func (s *style) takeOwn(property string, from own) {
	switch property {
	case "opacity":
		s.opacity = from.opacity
	case "display":
		s.absent = from.absent
	case "clip-path":
		s.clip = from.clip
	case "mask":
		s.mask = from.mask
	case "filter":
		s.filter = from.filter
	case "overflow":
		s.overflow = from.overflow
	case "vector-effect":
		s.constant = from.constant
	case "stop-color":
		s.stop = from.stop
	case "stop-opacity":
		s.stopOpacity = from.stopOpacity
	}
}

// setAsk reads a paint (SVG 2, 13.2).
func setAsk(into *ask, value string) bool {
	if server, rest, isServer := parseReference(value); isServer {
		asked := ask{kind: askServer, server: server}
		if rest != "" {
			if _, _, another := parseReference(rest); another {
				return false
			}
			asked.instead = &ask{}
			if !setAsk(asked.instead, rest) {
				return false
			}
		}
		*into = asked
		return true
	}
	switch strings.ToLower(value) {
	case "none", "context-fill", "context-stroke": // the latter belong to markers
		*into = ask{}
		return true
	case "currentcolor":
		*into = ask{kind: askCurrent}
		return true
	}
	colour, opacity, ok := parseColour(value)
	if ok {
		*into = ask{kind: askColour, colour: colour, opacity: opacity}
	}
	return ok
}

// parseReference reads url(…) and returns what it names, with the leading # of
// something in this file, and what follows.
func parseReference(value string) (name, rest string, is bool) {
	if len(value) < 4 || !strings.EqualFold(value[:4], "url(") {
		return "", "", false
	}
	end := strings.IndexByte(value, ')')
	if end < 0 {
		return "", "", false
	}
	return strings.Trim(value[4:end], blanks+`"'`), strings.TrimSpace(value[end+1:]), true
}

func setShare(into *float64, value string) bool {
	share, ok := shareOf(value)
	if ok {
		*into = share
	}
	return ok
}

// choose sets one of the choices by its place.
func choose[T ~uint8](into *T, value string, choices []string) bool {
	at := slices.Index(choices, strings.ToLower(value))
	if at >= 0 {
		*into = T(at)
	}
	return at >= 0
}
