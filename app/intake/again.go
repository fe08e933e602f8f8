package intake

import (
	"errors"
	"fmt"
	"io/fs"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork"
)

// again returns the order to read a file once more that was changed on disk.
func (i *Intake) again(name string, from *origin) *arrival {
	a := &arrival{path: from.path, again: name, page: 1, profile: name == i.doc.State().Spec.Profile}
	for _, piece := range i.doc.State().Spec.Artwork {
		if piece.File == name {
			a.page = int(piece.Page)
			break
		}
	}
	a.take = func(a *arrival) { i.renew(a, from) }
	a.fail = func(err error) { i.lost(name, from, err) }
	return a
}

// renew puts newer content in the place of a file of the project, and says what is
// different about it.
func (i *Intake) renew(a *arrival, from *origin) {
	from.failed = false
	before, found := i.doc.File(a.name)
	if !found || len(before) == len(a.data) && (len(before) == 0 || &before[0] == &a.data[0]) {
		return // the content is the same
	}
	old := i.shown(a.name)
	from.sum, i.newer = a.sum, true
	i.doc.ReplaceFile(a.name, a.data)
	if a.profile {
		i.around.Tell(phrase.New("The output profile %s was changed and read again.", a.name))
		return
	}
	i.around.Tell(phrase.New("%s was changed and read again. %s", a.name, i.difference(old, a.art)))
}

// lost says once that a file cannot be read again. The project keeps what it has.
func (i *Intake) lost(name string, from *origin, err error) {
	if from.failed {
		return
	}
	from.failed = true
	if errors.Is(err, fs.ErrNotExist) {
		i.around.Alarm(phrase.Errorf("%s is not at %s any more. The project keeps it as it was read last.", name, from.path))
		return
	}
	i.around.Alarm(phrase.Errorf("%s was changed, but cannot be read again: %s. The project keeps it as it was read last.", name, err))
}

// shown returns the artwork of a file as it is shown now, or nil.
func (i *Intake) shown(name string) *artwork.Art {
	snapshot := i.doc.State().Snapshot
	for at, piece := range snapshot.Spec.Artwork {
		if piece.File == name && at < len(snapshot.Hung) {
			return snapshot.Hung[at].Art
		}
	}
	return nil
}

// difference says how artwork differs from what it was, as far as numbers tell.
func (i *Intake) difference(old, now *artwork.Art) phrase.Phrase {
	switch {
	case old == nil || now == nil:
		return phrase.New("Look whether it is still in its place.")
	case old.Source.Size.Sub(now.Source.Size).Length() > 0.05:
		return phrase.New("Its size is %s now; it was %s.", i.size(now.Source.Size), i.size(old.Source.Size))
	case pixels(old) != pixels(now):
		return phrase.New("It has %s pixels now; it had %s.", pixels(now), pixels(old))
	case old.Pages != now.Pages:
		return phrase.New("It has %d pages now; it had %d.", now.Pages, old.Pages)
	}
	return phrase.New("Its size is the same, %s.", i.size(now.Source.Size))
}

// size writes a size in the unit of the user.
func (i *Intake) size(mm geometry.Vec2) string {
	unit := i.set.Unit()
	length := func(mm float64) string { return geometry.FormatNumber(mm/unit.Length(), unit.Decimals()) }
	return geometry.WithUnit(length(mm.X)+" × "+length(mm.Y), string(unit))
}

// pixels writes how many pixels a raster file has, nothing for another.
func pixels(art *artwork.Art) string {
	if art.Raster == nil {
		return ""
	}
	return fmt.Sprintf("%d × %d", art.Raster.Size.X, art.Raster.Size.Y)
}
