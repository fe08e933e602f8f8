package intake

import (
	"bytes"
	"path/filepath"

	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork"
	"gussetwright/render/pdf/profile"
)

// arrival is a file on its way from disk into the document.
type arrival struct {
	path    string
	page    int    // to be opened
	profile bool   // is no artwork, but a profile
	again   string // the name in the project of a file that is read again, else empty
	take    func(*arrival)
	fail    func(error) // nil: the user is told

	started bool
	name    string // in the project; known once it was read, as are data and sum
	data    []byte
	sum     string
	art     *artwork.Art // known once it was opened
}

// order puts a file at the end of the queue.
func (i *Intake) order(a *arrival) {
	if i.closed {
		return
	}
	if whole, err := filepath.Abs(a.path); err == nil {
		a.path = whole
	}
	i.queue = append(i.queue, a)
	i.tellBusy()
	i.next()
}

// next begins with the first of the queue. It is watched before it is read, so that no
// change is missed.
func (i *Intake) next() {
	if len(i.queue) == 0 || i.queue[0].started {
		return
	}
	a := i.queue[0]
	a.started = true
	i.watch(a.path)
	path, room, later := a.path, i.room(a.again), i.around.Later
	go func() {
		name, data, err := project.Take(path, room)
		sum := sumOf(data)
		later(func() {
			a.sum = sum
			i.taken(a, name, data, err)
		})
	}()
}

// underWay tells whether an arrival is still wanted: another project may have been
// opened since.
func (i *Intake) underWay(a *arrival) bool {
	return !i.closed && len(i.queue) > 0 && i.queue[0] == a
}

// taken goes on with a file that was read.
func (i *Intake) taken(a *arrival, name string, data []byte, err error) {
	if !i.underWay(a) {
		return
	}
	if err != nil {
		i.done(a, err)
		return
	}
	a.name, a.data = name, data
	if a.again != "" {
		a.name = a.again
	} else {
		a.name = i.doc.FreeName(name, data)
	}
	if there, found := i.doc.File(a.name); found && bytes.Equal(there, data) {
		a.data = there // the gallery may have it open already
	}
	i.look()
}

// look goes on with the first of the queue once it is opened. It waits for the end of
// a drag, for what is added then would become part of its step.
func (i *Intake) look() {
	if i.closed || len(i.queue) == 0 || i.queue[0].data == nil || i.doc.State().Dragging {
		return
	}
	a := i.queue[0]
	if a.profile {
		_, err := profile.Press(a.data)
		if err != nil {
			err = phrase.Errorf("use the output profile %s: %s", a.name, err)
		}
		i.done(a, err)
		return
	}
	art, err := i.gallery.Art(a.name, a.data, a.page)
	if art != nil || err != nil {
		a.art = art
		i.done(a, err)
	}
}

// done ends an arrival, well or with an error, and begins with the next.
func (i *Intake) done(a *arrival, err error) {
	i.queue = i.queue[1:]
	switch {
	case err == nil:
		a.take(a)
	case a.fail != nil:
		a.fail(err)
	default:
		i.around.Alarm(err)
	}
	i.tellBusy()
	i.next()
}

// remember notes where a file of the project came from.
func (i *Intake) remember(a *arrival) {
	i.origins[a.name] = &origin{path: a.path, sum: a.sum}
	i.set.AddOrigin(settings.Origin{Sum: a.sum, Path: a.path})
}

// rememberAll notes where the files of a project came from that was saved. What they were
// on the way there nobody needs to know.
func (i *Intake) rememberAll() {
	var all []settings.Origin
	for _, name := range i.named {
		if from := i.origins[name]; from != nil && !from.unsure {
			all = append(all, settings.Origin{Sum: from.sum, Path: from.path, Missed: from.failed})
		}
	}
	i.set.AddOrigin(all...)
}
