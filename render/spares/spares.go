// Package spares keeps pictures that nobody looks at any more, so that the next is drawn
// over one of them. A picture for a pane takes megabytes; made anew for each step of a
// drag they would keep the collector of garbage busy.
package spares

import (
	"image"
	"sync"
)

// most bounds the pictures that are kept: one is shown, one is drawn, one is on its way.
const most = 3

// Pictures are the spare ones. The zero value is ready for use, by several goroutines; none
// of them waits for another that draws.
type Pictures struct {
	lock sync.Mutex
	kept []*image.RGBA
}

// Take returns a picture of a size in pixels, both at least 1. What is on it is left from
// before. Spare ones of another size are dropped.
func (p *Pictures) Take(width, height int) *image.RGBA {
	p.lock.Lock()
	defer p.lock.Unlock()
	area := image.Rect(0, 0, width, height)
	for len(p.kept) > 0 {
		last := p.kept[len(p.kept)-1]
		p.kept = p.kept[:len(p.kept)-1]
		if last.Rect == area {
			return last
		}
	}
	return image.NewRGBA(area)
}

// Give takes a picture to be drawn over; nil is none.
func (p *Pictures) Give(picture *image.RGBA) {
	p.lock.Lock()
	defer p.lock.Unlock()
	if picture != nil && len(p.kept) < most {
		p.kept = append(p.kept, picture)
	}
}
