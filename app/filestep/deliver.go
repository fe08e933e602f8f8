package filestep

import (
	"errors"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/export"
	"gussetwright/app/jobs"
)

// Deliver writes one kind of file into the folder of the step for another part of the
// window, whatever is ticked. kind is its name. done is told how that went, on fyne's
// goroutine.
func (s *Step) Deliver(kind string, done func(jobs.Result)) {
	if err := s.deliver(kind, done); err != nil {
		done(jobs.Result{Err: err})
	}
}

func (s *Step) deliver(kind string, done func(jobs.Result)) error {
	kinds, err := export.Choose(kind)
	if err != nil {
		return err
	}
	if err := s.doc.State().Err; err != nil {
		return err
	}
	job := s.job(kinds)
	if job.Folder == "" {
		return errors.New(lang.L("there is no folder for the files; choose one in the step Files"))
	}
	err = s.runner.Start(job, func(float64, string) {}, func(result jobs.Result) {
		s.later(func() {
			s.list.owns(result.Paths)
			s.choicesChanged()
			done(result)
		})
	})
	if err == nil {
		s.button.Disable()
	}
	return err
}
