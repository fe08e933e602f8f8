// Package inspector looks at the pixels of the artwork, and for what would make the sheet
// hold more, once the bag has come to rest, away from the window, and adds what it finds
// to the findings of the document.
package inspector

import (
	"context"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/latest"
	"gussetwright/geometry/check"
)

// Inspector follows a document. It belongs to the goroutine of the window.
type Inspector struct {
	doc    *document.Document
	worker *latest.Worker[order, result]
	stop   func()
	end    context.CancelFunc // of the look that is under way
	last   *document.Snapshot // that was ordered
}

// rest is how long the look waits, so that it does not keep the pictures of the bag
// waiting that are drawn at the same time.
const rest = 120 * time.Millisecond

type order struct {
	ctx      context.Context
	snapshot *document.Snapshot
}

type result struct {
	of       *document.Snapshot
	findings []check.Finding
}

// New returns an inspector at work. later does something on the goroutine of the
// window. Close it when the window is closed.
func New(doc *document.Document, later func(func())) *Inspector {
	i := &Inspector{doc: doc, end: func() {}}
	i.worker = latest.New(func(o order) result {
		select {
		case <-time.After(rest):
		case <-o.ctx.Done():
		}
		return result{o.snapshot, o.snapshot.Look(o.ctx)}
	}, func(r result) {
		later(func() { i.doc.Found(r.of, r.findings) })
	})
	i.follow(doc.State())
	i.stop = doc.Listen(i.follow)
	return i
}

// follow orders a look at a bag that is new and not being dragged. What was being
// looked at is of no use any more.
func (i *Inspector) follow(state document.State) {
	if state.Dragging || state.Err != nil || state.Snapshot == i.last || state.Snapshot.Looked() {
		return
	}
	i.end()
	ctx, end := context.WithCancel(context.Background())
	i.end, i.last = end, state.Snapshot
	i.worker.Order(order{ctx, state.Snapshot})
}

// Close ends following and looking.
func (i *Inspector) Close() {
	i.stop()
	i.end()
	i.worker.Close()
}
