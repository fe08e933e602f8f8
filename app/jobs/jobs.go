// Package jobs does long work in the background: one job at a time, which tells how
// far it is and can be cancelled.
package jobs

import (
	"context"
	"errors"
	"sync"

	"gussetwright/app/export"
	"gussetwright/geometry/phrase"
)

// Result is how a job ended.
type Result struct {
	Paths []string // the files that were written, even where Err is set
	Err   error    // why not all were; wraps context.Canceled when it was cancelled
}

// Cancelled tells whether the job ended because it was cancelled.
func (r Result) Cancelled() bool { return errors.Is(r.Err, context.Canceled) }

// Writer writes files as export.Write does.
type Writer func(ctx context.Context, job export.Job, progress func(share float64, kind string)) ([]string, error)

// ErrBusy says that a job is running already.
var ErrBusy = phrase.Errorf("files are being written already; wait until they are, or cancel that first")

// Runner runs one job at a time. Its methods may be called from any goroutine.
type Runner struct {
	write Writer

	lock   sync.Mutex
	cancel context.CancelFunc // nil while nothing runs
	ended  chan struct{}      // closed when the running job has ended
}

// New returns a runner that writes through write, usually export.Write.
func New(write Writer) *Runner { return &Runner{write: write} }

// Start begins a job and returns at once, with ErrBusy while another is running.
// progress is called with the share that is done and the kind that comes next, then
// done once, both on the goroutine of the job: hand them on with fyne.Do. A new job
// may be started from done.
func (r *Runner) Start(job export.Job, progress func(share float64, kind string), done func(Result)) error {
	r.lock.Lock()
	defer r.lock.Unlock()
	if r.cancel != nil {
		return ErrBusy
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan struct{})
	r.cancel, r.ended = cancel, ended
	go func() {
		defer close(ended)
		result := r.run(ctx, job, progress)
		cancel()
		r.lock.Lock()
		r.cancel = nil
		r.lock.Unlock()
		done(result)
	}()
	return nil
}

// run writes the files. A fault of the program in it must not take the unsaved work
// of the user along.
func (r *Runner) run(ctx context.Context, job export.Job, progress func(float64, string)) (result Result) {
	defer func() {
		if fault := recover(); fault != nil {
			result.Err = phrase.Errorf("export: the program failed (%v); save the bag and report it", fault)
		}
	}()
	result.Paths, result.Err = r.write(ctx, job, progress)
	return result
}

// Cancel ends the running job before its next file. It does not wait for that, and
// does nothing where no job runs.
func (r *Runner) Cancel() {
	r.lock.Lock()
	defer r.lock.Unlock()
	if r.cancel != nil {
		r.cancel()
	}
}

// Busy tells whether a job is running.
func (r *Runner) Busy() bool {
	r.lock.Lock()
	defer r.lock.Unlock()
	return r.cancel != nil
}

// Wait waits until the job that is running has ended and was told.
func (r *Runner) Wait() {
	r.lock.Lock()
	ended := r.ended
	r.lock.Unlock()
	if ended != nil {
		<-ended
	}
}
