package vector

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// server is a gradient element with what it takes over from others.
type server struct {
	chain []*node // itself first, then what it refers to
	stops []Stop
}

// mostChain is how many gradients may take over from each other.
const mostChain = 32

// server reads a gradient once.
func (r *reader) server(n *node) (*server, error) {
	if known := r.servers[n]; known != nil {
		return known, nil
	}
	s := &server{}
	for at := n; at != nil && (at.name == "linearGradient" || at.name == "radialGradient"); {
		s.chain = append(s.chain, at)
		if s.stops == nil {
			if err := r.stops(s, at); err != nil {
				return nil, err
			}
		}
		next := r.target(at)
		for _, before := range s.chain {
			if next == before || len(s.chain) >= mostChain {
				r.notes.add(loop)
				next = nil
				break
			}
		}
		at = next
	}
	if spread := s.attribute("spreadMethod", ""); spread == "reflect" || spread == "repeat" {
		r.notes.add(repeatedGradient)
	}
	if s.attribute("color-interpolation", "") == "linearRGB" {
		r.notes.add(linearGradient)
	}
	r.servers[n] = s
	return s, nil
}

// stops reads the stops of one gradient element.
func (r *reader) stops(s *server, n *node) error {
	around := r.styleOf(n)
	for _, child := range n.children {
		if child.name != "stop" {
			continue
		}
		if err := r.work(child.weight); err != nil {
			return err
		}
		style, broken := around.within(child)
		r.complain(broken)
		at, ok := shareOf(child.attribute("offset"))
		if !ok {
			at = 0
		}
		if len(s.stops) > 0 {
			at = max(at, s.stops[len(s.stops)-1].At)
		}
		colour, opacity := style.stop.colour, style.stop.opacity
		if style.stop.kind == askCurrent {
			colour, opacity = style.colour, style.colourOpacity
		}
		s.stops = append(s.stops, Stop{at, colour, opacity * style.stopOpacity})
	}
	return nil
}

// styleOf returns the style of an element where it stands in the file.
func (r *reader) styleOf(n *node) style {
	around := usual()
	if n.parent != nil {
		around = r.styleOf(n.parent)
	}
	style, _ := around.within(n)
	return style
}

// find returns the first gradient of the chain that has an attribute; those of
// places count only from gradients of the kind of the first.
func (s *server) find(name string, ofKind bool) *node {
	for _, n := range s.chain {
		if _, there := n.lookup(name); there && (!ofKind || n.name == s.chain[0].name) {
			return n
		}
	}
	return nil
}

func (s *server) attribute(name, usual string) string {
	if n := s.find(name, false); n != nil {
		return n.attribute(name)
	}
	return usual
}

// blend returns a gradient as a paint of what own covers.
func (r *reader) blend(n *node, opacity float64, own outline.Path, f frame) (Paint, error) {
	s, err := r.server(n)
	if err != nil || len(s.stops) == 0 {
		return Paint{}, err
	}
	place, port := f.place, f.port
	if s.attribute("gradientUnits", "objectBoundingBox") != "userSpaceOnUse" {
		box, _ := own.Bounds(geometry.Identity())
		place = place.After(geometry.Affine{U: geometry.Vec2{X: box.Width()}, V: geometry.Vec2{Y: box.Height()}, Origin: box.Min})
		port = geometry.Vec2{X: 1, Y: 1}
	}
	if text := s.attribute("gradientTransform", ""); text != "" {
		motion, ok := parseTransform(text)
		if !ok {
			r.notes.add(brokenValue)
		} else {
			place = place.After(motion)
		}
	}
	if _, solid := place.Inverse(); !solid || !finite(place) {
		return Paint{}, nil
	}
	g := &Gradient{Place: place, Stops: s.stops, Radial: n.name == "radialGradient"}
	f.port = port
	shrunk := g.setLine
	if g.Radial {
		shrunk = g.setCircles
	}
	last := s.stops[len(s.stops)-1]
	if len(s.stops) == 1 || shrunk(r, s, f) {
		return Paint{Kind: Solid, Colour: last.Colour, Opacity: last.Opacity * opacity}, nil
	}
	return Paint{Kind: Blend, Gradient: g, Opacity: opacity}, nil
}

// coordinate returns an attribute of a place.
func (r *reader) coordinate(s *server, name, usual string, f frame, share float64) float64 {
	n := s.find(name, true)
	if n == nil {
		n = s.chain[0]
	}
	return r.length(n, name, usual, f, share)
}

// setLine sets the ends of a linear gradient, and tells whether they are the same.
func (g *Gradient) setLine(r *reader, s *server, f frame) (shrunk bool) {
	at := func(x, y, usual string) geometry.Vec2 {
		return geometry.Vec2{X: r.coordinate(s, x, usual, f, f.port.X), Y: r.coordinate(s, y, "0%", f, f.port.Y)}
	}
	g.From, g.To = at("x1", "y1", "0%"), at("x2", "y2", "100%")
	return g.From == g.To
}

// setCircles sets the circles of a radial gradient, and tells whether the outer one
// has no size.
func (g *Gradient) setCircles(r *reader, s *server, f frame) (shrunk bool) {
	g.To = geometry.Vec2{X: r.coordinate(s, "cx", "50%", f, f.port.X), Y: r.coordinate(s, "cy", "50%", f, f.port.Y)}
	g.ToRadius = r.coordinate(s, "r", "50%", f, f.diagonal())
	g.FromRadius = max(r.coordinate(s, "fr", "0%", f, f.diagonal()), 0)
	g.From = g.To
	if s.find("fx", true) != nil {
		g.From.X = r.coordinate(s, "fx", "50%", f, f.port.X)
	}
	if s.find("fy", true) != nil {
		g.From.Y = r.coordinate(s, "fy", "50%", f, f.port.Y)
	}
	if !(g.ToRadius > 0) {
		return true
	}
	// A focus outside of the circle moves to just inside of it (SVG 1.1, 13.2.3),
	// where the rings still go all the way round.
	const inside = 0.999
	g.FromRadius = min(g.FromRadius, inside*g.ToRadius)
	if way := g.From.Sub(g.To); way.Length() > inside*(g.ToRadius-g.FromRadius) {
		g.From = g.To.Add(way.Scale(inside * (g.ToRadius - g.FromRadius) / way.Length()))
	}
	return math.IsInf(g.ToRadius, 0)
}
