package report

import (
	"errors"
	"fmt"
	"math"

	"gussetwright/geometry"
)

// Limits of a page in mm: a side as PDF can hold it, and the least size of lines and
// letters that every program draws.
const (
	longest  = 5000
	shortest = 10
	thinnest = 0.01
)

// Check returns an error for the first thing on the page that no file can hold.
func (p Page) Check() error {
	for _, side := range []float64{p.Width, p.Height} {
		if !(side >= shortest && side <= longest) {
			return fmt.Errorf("the page is %g × %g mm; give both sides %d to %d mm", p.Width, p.Height, shortest, longest)
		}
	}
	for i, item := range p.Items {
		if err := check(item); err != nil {
			return fmt.Errorf("item %d: %w", i+1, err)
		}
	}
	return nil
}

func check(item Item) error {
	switch item := item.(type) {
	case Text:
		if !(item.Size >= thinnest && item.Size <= longest) {
			return fmt.Errorf("text %.40q has the size %g mm; give %g to %d mm", item.Text, item.Size, thinnest, longest)
		}
		return errors.Join(numbers("place of a text", item.At.X, item.At.Y, item.Turn), item.Colour.check())
	case Rule:
		return errors.Join(checkPath(item.Path()), item.Line.check())
	case Box:
		if !(item.Rect.Width() > 0 && item.Rect.Height() > 0) {
			return fmt.Errorf("a box is %g × %g mm; it must have an area", item.Rect.Width(), item.Rect.Height())
		}
		return errors.Join(numbers("radius of a box", item.Radius), checkPath(item.Path()), item.Fill.check(), item.Line.check())
	case Shape:
		return errors.Join(checkPath(item.Path), item.Fill.check(), item.Line.check())
	case Picture:
		return item.check()
	case Window:
		return item.check()
	}
	return fmt.Errorf("it is a %T; use a Text, a Rule, a Box, a Shape, a Picture or a Window", item)
}

func (p Picture) check() error {
	if !(p.Rect.Width() > 0 && p.Rect.Height() > 0) {
		return fmt.Errorf("a picture is %g × %g mm; it must have an area", p.Rect.Width(), p.Rect.Height())
	}
	if p.Image == nil && p.Form == nil {
		return errors.New("a picture shows nothing; give it an image or a form")
	}
	if p.Form == nil && p.Image.Bounds().Empty() {
		return errors.New("the image of a picture has no pixels; leave the picture out")
	}
	if p.Form != nil && !(p.Form.Width >= thinnest && p.Form.Height >= thinnest && p.Form.Width+p.Form.Height < 1e9) {
		return fmt.Errorf("the form of a picture is %g × %g; both must be %g at least", p.Form.Width, p.Form.Height, thinnest)
	}
	if p.Quality < 0 || p.Quality > 100 {
		return fmt.Errorf("the quality of a picture is %d; give 1 to 100, or 0 to keep every pixel", p.Quality)
	}
	return numbers("place of a picture", p.Rect.Min.X, p.Rect.Min.Y, p.Rect.Max.X, p.Rect.Max.Y)
}

func (c Colour) check() error {
	for _, share := range []float64{c.inks.C, c.inks.M, c.inks.Y, c.inks.K} {
		if !(share >= 0 && share <= 1) {
			return fmt.Errorf("an ink is %g; give a share from 0 to 1", share)
		}
	}
	return nil
}

func (l Line) check() error {
	if l.Colour.None() {
		return nil
	}
	if !(l.Width >= thinnest && l.Width <= longest) {
		return fmt.Errorf("a line is %g mm wide; give %g to %d mm, or no colour for no line", l.Width, thinnest, longest)
	}
	sum := 0.0
	for _, length := range l.Dash {
		if !(length >= 0 && length <= longest) {
			return fmt.Errorf("a dash is %g mm long; give 0 to %d mm", length, longest)
		}
		sum += length
	}
	if len(l.Dash) > 0 && sum < thinnest {
		return fmt.Errorf("the dashes of a line are %g mm in all; leave them out for a solid line", sum)
	}
	return l.Colour.check()
}

func checkPath(path geometry.Path) error {
	if path.Len() == 0 {
		return errors.New("a path has no edge; leave it out")
	}
	for i := range path.Len() {
		edge := path.Edge(i)
		reach := edge.To.Sub(edge.From).Length() * math.Abs(edge.Bulge)
		if err := numbers("path", edge.From.X, edge.From.Y, edge.To.X, edge.To.Y, edge.Bulge, reach); err != nil {
			return err
		}
	}
	return nil
}

func numbers(what string, values ...float64) error {
	for _, value := range values {
		if !(math.Abs(value) <= 2*longest) {
			return fmt.Errorf("%s: %g is not a number from %d to %d", what, value, -2*longest, 2*longest)
		}
	}
	return nil
}
