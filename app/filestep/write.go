package filestep

import (
	"time"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/export"
	"gussetwright/app/jobs"
)

// write begins to write the files.
func (s *Step) write() {
	state := s.doc.State()
	folder := s.folder.path()
	job := export.Job{
		Folder: folder, Project: s.project(), Snapshot: state.Snapshot, Date: s.dayOf(state), Kinds: s.kinds.chosen(),
		Say: func(text string) string { return lang.L(text) }, Unit: s.picture.set.Unit(),
	}
	s.result.clear()
	s.running.begin()
	s.column.Grown()
	wait := time.AfterFunc(s.patience, func() { s.later(s.running.reveal) })
	progress := func(share float64, kind string) { s.later(func() { s.running.tell(share, s.kinds.title(kind)) }) }
	done := func(result jobs.Result) {
		wait.Stop()
		s.later(func() { s.written(folder, result) })
	}
	if err := s.runner.Start(job, progress, done); err != nil {
		wait.Stop()
		s.running.end()
		s.result.fail(jobs.Result{Err: err})
		return
	}
	s.button.Disable()
}

// written shows how it went.
func (s *Step) written(folder string, result jobs.Result) {
	s.running.end()
	switch {
	case result.Err == nil:
		s.result.succeed(folder, result.Paths)
	case result.Cancelled():
		s.result.cancelled()
	default:
		s.result.fail(result)
	}
	s.list.forget() // other files are there now
	s.choicesChanged()
}
