package filestep

import "sync"

// news hands what is heard of a job on to fyne's goroutine: the latest alone, however much
// came before it could be shown. A dozen files that are made at once would otherwise take a
// frame of the window each, and what others hand over would wait behind them all.
type news struct {
	later func(func())
	show  func(share float64, kind string)

	lock    sync.Mutex
	share   float64
	kind    string
	waiting bool // to be shown
}

// tell is progress of jobs.Runner.Start.
func (n *news) tell(share float64, kind string) {
	n.lock.Lock()
	defer n.lock.Unlock()
	n.share, n.kind = share, kind
	if !n.waiting {
		n.waiting = true
		n.later(n.arrive)
	}
}

func (n *news) arrive() {
	n.lock.Lock()
	share, kind := n.share, n.kind
	n.waiting = false
	n.lock.Unlock()
	n.show(share, kind)
}
