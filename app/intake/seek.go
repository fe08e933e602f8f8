package intake

import (
	"path/filepath"
	"strings"

	"gussetwright/app/settings"
	"gussetwright/geometry/phrase"
)

// search looks for where a file of the project comes from. A project keeps no paths of
// the computer on which it was made. But the settings remember where a content was read
// from, and what lies beside the project under the same name and has the same content
// counts as where the file came from: beside a bare bag.json it was just read there.
type search struct {
	name   string
	held   []byte
	sum    string
	known  settings.Origin
	trials []trial // of which the first is under way
	from   *origin // of that trial
	found  likeness
}

// trial is one place to look.
type trial struct {
	path    string
	compare func(path string, content []byte) likeness
	newer   bool // a file with another content will do
}

// seek looks for the files of the project and watches those that it finds.
func (i *Intake) seek(path string) {
	var searches []*search
	for _, name := range i.named {
		if data, there := i.doc.File(name); there && i.origins[name] == nil {
			searches = append(searches, &search{name: name, held: data})
		}
	}
	if len(searches) == 0 {
		return
	}
	i.seeking++
	loads, later := i.loads, i.around.Later
	go func() {
		for _, s := range searches {
			s.sum = sumOf(s.held)
		}
		later(func() {
			i.seeking--
			if i.closed || i.loads != loads {
				return
			}
			for _, s := range searches {
				i.plan(s, path)
			}
			i.try(searches)
		})
	}()
}

// plan sets where to look for a file: where it was read from, beside the project, and
// where it was read from once more, for a newer one.
func (i *Intake) plan(s *search, project string) {
	known, remembered := i.set.Origin(s.sum)
	if remembered {
		s.known = known
		s.trials = append(s.trials, trial{path: known.Path, compare: compare})
	}
	if project != "" {
		s.trials = append(s.trials, trial{path: filepath.Join(filepath.Dir(project), s.name), compare: compareBeside})
	}
	if remembered {
		s.trials = append(s.trials, trial{path: known.Path, compare: compare, newer: true})
	}
}

// try makes the next trial of every search. Files are watched before they are compared,
// so that no change is missed.
func (i *Intake) try(searches []*search) {
	var open []*search
	for _, s := range searches {
		if len(s.trials) == 0 || i.origins[s.name] != nil { // it was replaced meanwhile
			continue
		}
		s.from = &origin{path: s.trials[0].path, sum: s.sum, unsure: true}
		i.origins[s.name] = s.from
		i.watch(s.from.path)
		open = append(open, s)
	}
	if len(open) == 0 {
		return
	}
	i.seeking++
	later := i.around.Later
	go func() {
		for _, s := range open {
			s.found = s.trials[0].compare(s.from.path, s.held)
		}
		later(func() {
			i.seeking--
			i.tried(open)
		})
	}()
}

// tried keeps the files that were found and goes on looking for the others. It tells of
// those that are not any more what they were.
func (i *Intake) tried(searches []*search) {
	if i.closed {
		return
	}
	var open, changed, missed []*search
	for _, s := range searches {
		if i.origins[s.name] != s.from { // another project was opened, or the file replaced
			i.unwatch(s.from.path)
			continue
		}
		last := len(s.trials) == 1
		switch {
		case s.found == same:
			i.keep(s)
		case s.found == other && s.trials[0].newer:
			i.keep(s)
			changed = append(changed, s)
		case last && s.trials[0].newer:
			s.from.failed = true // it may come back
			i.keep(s)
			if !s.known.Missed {
				missed = append(missed, s)
			}
		default:
			delete(i.origins, s.name)
			i.unwatch(s.from.path)
			s.trials = s.trials[1:]
			open = append(open, s)
		}
	}
	i.tellFound(changed, missed)
	i.try(open)
}

// keep watches a file from now on.
func (i *Intake) keep(s *search) {
	s.from.unsure = false
	if s.known.Missed && s.known.Path == s.from.path && !s.from.failed {
		i.set.AddOrigin(settings.Origin{Sum: s.sum, Path: s.known.Path})
	}
	i.readAgain(s.name, s.from)
}

// tellFound tells of files that are not what the project holds any more, or are gone. The
// project is left as it is: it may be meant to stay as it was.
func (i *Intake) tellFound(changed, missed []*search) {
	var names, places []string
	for _, s := range changed {
		names = append(names, s.name)
	}
	var known []settings.Origin
	for _, s := range missed {
		places = append(places, s.known.Path)
		known = append(known, settings.Origin{Sum: s.sum, Path: s.known.Path, Missed: true})
	}
	i.set.AddOrigin(known...)
	newer := phrase.New("Changed on disk since the project took it: %s. The project keeps what it has. To take the newer file, save it once more where it was drawn, or replace it at the step Artwork.", strings.Join(names, ", "))
	lost := phrase.New("Not on disk any more: %s. The project keeps it as it was read last.", strings.Join(places, ", "))
	switch {
	case len(names) > 0 && len(places) > 0:
		i.around.Tell(phrase.New("%s %s", newer, lost))
	case len(names) > 0:
		i.around.Tell(newer)
	case len(places) > 0:
		i.around.Tell(lost)
	}
}
