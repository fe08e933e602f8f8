package filestep

import (
	"context"
	"runtime/debug"
	"time"

	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/words"
)

// writeTidily writes files and gives back the memory of the pictures that were drawn for
// them: hundreds of megabytes, and it may be long until the collector of garbage comes by
// itself.
func writeTidily(ctx context.Context, job export.Job, progress func(share float64, kind string)) ([]string, error) {
	defer debug.FreeOSMemory()
	return export.Write(ctx, job, progress)
}

// write writes the files, after a question where that replaces some that were not written
// from here.
func (s *Step) write() {
	if foreign := s.list.foreign(); len(foreign) > 0 {
		s.question.ask(foreign)
		return
	}
	s.begin()
}

// answered writes the files where those that are there may be replaced.
func (s *Step) answered(replace bool) {
	if replace {
		s.begin()
	}
	s.window.Canvas().Focus(s.button)
}

// begin begins to write the files.
func (s *Step) begin() {
	job := s.job(s.kinds.chosen())
	s.result.clear()
	s.running.begin()
	s.foot.Grown()
	wait := time.AfterFunc(s.patience, func() { s.later(s.running.reveal) })
	progress := &news{later: s.later, show: func(share float64, kind string) { s.running.tell(share, s.kinds.title(kind)) }}
	done := func(result jobs.Result) {
		wait.Stop()
		s.later(func() { s.written(job, result) })
	}
	if err := s.runner.Start(job, progress.tell, done); err != nil {
		wait.Stop()
		s.running.end()
		s.result.fail(jobs.Result{Err: err})
		return
	}
	s.button.Disable()
}

// job returns the order for kinds of files of the bag as it is now.
func (s *Step) job(kinds []export.Kind) export.Job {
	state, said := s.doc.State(), words.Document(s.picture.set.Unit())
	return export.Job{
		Folder: s.folder.path(), Project: s.project(), Snapshot: state.Snapshot, Date: s.dayOf(state), Kinds: kinds,
		Say: said.Say, Unit: said.Unit, PracticePaper: s.paper.chosen(),
	}
}

// written shows how it went.
func (s *Step) written(job export.Job, result jobs.Result) {
	s.running.end()
	s.list.wrote(result.Paths, job.Snapshot)
	switch {
	case result.Err == nil:
		s.result.succeed(job.Folder, result.Paths)
	case result.Cancelled():
		s.result.cancelled()
	default:
		s.result.fail(result)
	}
	s.choicesChanged()
	s.scroll.ToEnd()
}
