// Package latest does slow work away from the goroutine of the window, such as
// drawing a picture: the newest order wins, and orders that were overtaken are
// never begun.
package latest

import (
	"runtime"
	"sync"
)

// Worker makes results of type R from orders of type O, one at a time.
type Worker[O, R any] struct {
	make    func(O) R
	deliver func(R)

	lock    sync.Mutex
	waiting *O
	busy    bool
	resting bool
	closed  bool
}

// New returns a worker. make runs on a goroutine of its own while there is work;
// deliver is called there with each result that was not overtaken, and usually
// hands it on with fyne.Do.
func New[O, R any](make func(O) R, deliver func(R)) *Worker[O, R] {
	return &Worker[O, R]{make: make, deliver: deliver}
}

// Order asks for a result. An order that is still waiting is forgotten.
func (w *Worker[O, R]) Order(order O) {
	w.lock.Lock()
	defer w.lock.Unlock()
	if w.closed {
		return
	}
	w.waiting = &order
	w.begin()
}

// Rest begins no order until Wake is called, for the processors are wanted for something
// else. What is under way is finished.
func (w *Worker[O, R]) Rest() {
	w.lock.Lock()
	defer w.lock.Unlock()
	w.resting = true
}

// Wake begins the order that came last while the worker rested, if any.
func (w *Worker[O, R]) Wake() {
	w.lock.Lock()
	defer w.lock.Unlock()
	w.resting = false
	w.begin()
}

// begin works if there is something to do. The lock is held.
func (w *Worker[O, R]) begin() {
	if w.waiting != nil && !w.busy && !w.resting {
		w.busy = true
		go w.work()
	}
}

// Close ends the worker: nothing is delivered any more once what is under way ends.
func (w *Worker[O, R]) Close() {
	w.lock.Lock()
	defer w.lock.Unlock()
	w.closed, w.waiting = true, nil
}

func (w *Worker[O, R]) work() {
	for {
		order, more := w.next()
		if !more {
			return
		}
		result := w.make(order)
		if !w.overtaken() {
			w.deliver(result)
		}
		runtime.Gosched() // on a single processor the window comes first: it shows the result
	}
}

func (w *Worker[O, R]) next() (order O, more bool) {
	w.lock.Lock()
	defer w.lock.Unlock()
	if w.waiting == nil || w.resting {
		w.busy = false
		return order, false
	}
	order, w.waiting = *w.waiting, nil
	return order, true
}

// overtaken tells whether the result in hand is of no use any more. While orders
// keep coming every result is shown all the same, or a long drag would show none;
// only a closed worker drops them.
func (w *Worker[O, R]) overtaken() bool {
	w.lock.Lock()
	defer w.lock.Unlock()
	return w.closed
}
