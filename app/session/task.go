package session

// Task is writing in three parts, so that a slow disk never stops the window: it was
// begun on the goroutine of the session; Write may run on any other and takes as long
// as the disk does; End follows on the goroutine of the session.
type Task struct {
	write func() error
	end   func(err error) error
	err   error
}

// Write writes the files.
func (t *Task) Write() { t.err = t.write() }

// End takes over what was written and returns what went wrong.
func (t *Task) End() error { return t.end(t.err) }

// now does all three parts at once.
func (t *Task) now() error {
	t.Write()
	return t.End()
}

// failed is a task that has nothing to write, because of an error.
func failed(err error) *Task {
	return &Task{write: func() error { return err }, end: func(err error) error { return err }}
}
