package vector

import (
	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// pathData reads the d attribute of a path (SVG 2, 9.3).
type pathData struct {
	numbers
	path  outline.Path
	pen   geometry.Vec2 // the current point
	start geometry.Vec2 // where the part began
	open  bool          // the part has begun and was not closed
	// control is the last control point if last, the last command, was a curve.
	control geometry.Vec2
	last    byte
}

// parsePath returns the path as far as it can be read, and whether that is all of
// it. A path that is too long gives an error.
func parsePath(text string) (path outline.Path, whole bool, err error) {
	d := pathData{numbers: numbers{text: text}}
	for !d.done() {
		command := d.text[d.at]
		d.at++
		small := command | 0x20
		if d.path.Empty() && small != 'm' {
			return d.path, false, nil
		}
		for more := true; more; more = small != 'z' && d.more() {
			if len(d.path.Steps) > mostInPath {
				return outline.Path{}, false, tooMany("lines and curves of one path", mostInPath, "simplify the path")
			}
			d.skipBlanks()
			if !d.step(small, command == small) {
				return d.path, false, nil
			}
			d.last = small
			if small == 'm' { // more points are lines
				small, command = 'l', command-'m'+'l'
			}
		}
	}
	return d.path, true, nil
}

// more tells whether another set of numbers follows for the same command.
func (d *pathData) more() bool {
	before := d.at
	d.skipComma()
	if d.at < len(d.text) {
		if c := d.text[d.at]; c >= '0' && c <= '9' || c == '.' || c == '-' || c == '+' {
			return true
		}
	}
	d.at = before
	return false
}

// step reads the numbers of one command and takes the step.
func (d *pathData) step(command byte, relative bool) (ok bool) {
	switch command {
	case 'm':
		return d.move(relative)
	case 'l':
		to, ok := d.point(relative)
		return ok && d.line(to)
	case 'h', 'v':
		return d.straight(command, relative)
	case 'c', 's':
		return d.cubic(command, relative)
	case 'q', 't':
		return d.quadratic(command, relative)
	case 'a':
		return d.arc(relative)
	case 'z':
		if d.open {
			d.path.Close()
		}
		d.open, d.pen = false, d.start
		return true
	}
	return false
}

func (d *pathData) move(relative bool) bool {
	to, ok := d.point(relative)
	if ok {
		d.path.Move(to)
		d.pen, d.start, d.open = to, to, true
	}
	return ok
}

// point reads a point.
func (d *pathData) point(relative bool) (geometry.Vec2, bool) {
	x, ok := d.next()
	if !ok {
		return geometry.Vec2{}, false
	}
	d.skipComma()
	y, ok := d.next()
	p := geometry.Vec2{X: x, Y: y}
	if relative {
		p = p.Add(d.pen)
	}
	return p, ok
}

// points reads as many points as the list takes.
func (d *pathData) points(relative bool, list ...*geometry.Vec2) bool {
	for i, into := range list {
		if i > 0 {
			d.skipComma()
		}
		p, ok := d.point(relative)
		if !ok {
			return false
		}
		*into = p
	}
	return true
}

// begin makes sure that a part has begun: after a close the next begins where the
// last did.
func (d *pathData) begin() {
	if !d.open {
		d.path.Move(d.start)
		d.open = true
	}
}

func (d *pathData) line(to geometry.Vec2) bool {
	d.begin()
	d.path.Line(to)
	d.pen = to
	return true
}

func (d *pathData) straight(command byte, relative bool) bool {
	value, ok := d.next()
	if !ok {
		return false
	}
	to := d.pen
	along := &to.X
	if command == 'v' {
		along = &to.Y
	}
	if relative {
		value += *along
	}
	*along = value
	return d.line(to)
}

// mirrored returns the control point opposite of the last, or the current point if
// there was no curve of these commands before.
func (d *pathData) mirrored(curve, smooth byte) geometry.Vec2 {
	if d.last == curve || d.last == smooth {
		return d.pen.Scale(2).Sub(d.control)
	}
	return d.pen
}

func (d *pathData) cubic(command byte, relative bool) bool {
	leave := d.mirrored('c', 's')
	list := []*geometry.Vec2{&leave, new(geometry.Vec2), new(geometry.Vec2)}
	if command == 's' {
		list = list[1:]
	}
	if !d.points(relative, list...) {
		return false
	}
	arrive, to := *list[len(list)-2], *list[len(list)-1]
	d.curve(leave, arrive, to)
	d.control = arrive
	return true
}

func (d *pathData) quadratic(command byte, relative bool) bool {
	control := d.mirrored('q', 't')
	var to geometry.Vec2
	list := []*geometry.Vec2{&control, &to}
	if command == 't' {
		list = list[1:]
	}
	if !d.points(relative, list...) {
		return false
	}
	third := func(end geometry.Vec2) geometry.Vec2 { return end.Add(control.Sub(end).Scale(2.0 / 3)) }
	d.curve(third(d.pen), third(to), to)
	d.control = control
	return true
}

func (d *pathData) curve(leave, arrive, to geometry.Vec2) {
	d.begin()
	d.path.Curve(leave, arrive, to)
	d.pen = to
}

func (d *pathData) arc(relative bool) bool {
	var size [3]float64 // the half axes, and how far the first is turned, in degrees
	for i := range size {
		value, ok := d.next()
		if !ok {
			return false
		}
		size[i] = value
		d.skipComma()
	}
	large, ok := d.flag()
	if !ok {
		return false
	}
	d.skipComma()
	sweep, ok := d.flag()
	if !ok {
		return false
	}
	d.skipComma()
	to, ok := d.point(relative)
	if !ok {
		return false
	}
	d.begin()
	arcTo(&d.path, d.pen, to, size, large, sweep)
	d.pen = to
	return true
}
