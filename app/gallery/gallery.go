// Package gallery opens the artwork of a bag away from the window and keeps it open.
package gallery

import (
	"context"
	"runtime/debug"
	"sync"
	"time"
	"unsafe"

	"gussetwright/render/artwork"
)

// Limits of what is kept open. Artwork that is not shown is let go of only when it
// takes much room, as undo may want it back.
const (
	mostKept = 256 << 20 // bytes of pictures
	idle     = 20 * time.Second
	atOnce   = 2 // files that are opened side by side
)

// Gallery opens artwork, each page of a file once. Its methods may be called from any
// goroutine.
type Gallery struct {
	changed func()
	now     func() time.Time
	room    chan struct{}

	lock   sync.Mutex
	slots  map[key]*slot
	closed bool
}

// key tells the pages of files apart. A file that was read again lies elsewhere in
// memory, even under the same name.
type key struct {
	name string
	data *byte
	size int
	page int
}

// slot is the place of one page.
type slot struct {
	art  *artwork.Art
	err  error
	done bool
	used time.Time
	end  context.CancelFunc // stops opening it
}

// New returns an empty gallery. changed is called, on a goroutine of the gallery,
// whenever artwork was opened or proved unreadable.
func New(changed func()) *Gallery {
	return &Gallery{changed: changed, now: time.Now, room: make(chan struct{}, atOnce), slots: map[key]*slot{}}
}

// Art returns a page of artwork, or why it cannot be shown; neither while it is being
// opened, which begins when it is asked for first.
func (g *Gallery) Art(name string, data []byte, page int) (*artwork.Art, error) {
	g.lock.Lock()
	defer g.lock.Unlock()
	k := key{name, unsafe.SliceData(data), len(data), page}
	s, known := g.slots[k]
	if !known {
		s = &slot{}
		g.slots[k] = s
		if !g.closed {
			ctx, end := context.WithCancel(context.Background())
			s.end = end
			go g.open(ctx, s, name, data, page)
		}
	}
	s.used = g.now()
	return s.art, s.err
}

func (g *Gallery) open(ctx context.Context, s *slot, name string, data []byte, page int) {
	defer s.end()
	g.room <- struct{}{}
	art, err := artwork.Open(ctx, name, data, page)
	<-g.room
	g.lock.Lock()
	s.art, s.err, s.done = art, err, true
	g.tidy()
	told := !g.closed && ctx.Err() == nil
	g.lock.Unlock()
	if told {
		g.changed()
	}
	if g.Opening() == 0 {
		debug.FreeOSMemory() // decoding took many times what is kept
	}
}

// Opening returns how many pages are being opened.
func (g *Gallery) Opening() int {
	g.lock.Lock()
	defer g.lock.Unlock()
	count := 0
	for _, s := range g.slots {
		if !s.done {
			count++
		}
	}
	return count
}

// tidy lets go of artwork that nobody asked for lately, while there is much of it.
func (g *Gallery) tidy() {
	kept := 0
	for _, s := range g.slots {
		kept += s.bytes()
	}
	for k, s := range g.slots {
		if !s.done || kept <= mostKept || g.now().Sub(s.used) < idle {
			continue
		}
		kept -= s.bytes()
		delete(g.slots, k)
	}
}

// Forget lets go of artwork that nobody asked for lately and that cannot come back: held
// returns the content that the project has under a name, and what was opened from another
// content, of a file that was read again or of a project that was closed, is not shown
// any more.
func (g *Gallery) Forget(held func(name string) []byte) {
	g.lock.Lock()
	defer g.lock.Unlock()
	for k, s := range g.slots {
		data := held(k.name)
		if unsafe.SliceData(data) == k.data && len(data) == k.size {
			continue
		}
		if s.done && g.now().Sub(s.used) >= idle { // else it is being brought in
			delete(g.slots, k)
		}
	}
}

func (s *slot) bytes() int {
	size := 0
	if s.art != nil {
		for _, level := range s.art.Levels {
			size += len(level.Pix)
		}
	}
	return size
}

// Close stops whatever is being opened. Nothing is told any more.
func (g *Gallery) Close() {
	g.lock.Lock()
	defer g.lock.Unlock()
	g.closed = true
	for _, s := range g.slots {
		if s.end != nil {
			s.end()
		}
	}
}
