package document

import (
	"slices"

	"gussetwright/app/project"
)

// Kept returns the sizes that were kept to be compared with the bag.
func (d *Document) Kept() []project.KeptSize { return slices.Clone(d.kept) }

// Keep makes sizes those that are kept, project.MostKept at most. They are notes beside
// the bag and no step of its history: undo neither takes them away nor brings them back,
// and the bag has not changed. But the project differs from what was saved.
func (d *Document) Keep(sizes []project.KeptSize) {
	if slices.Equal(d.kept, sizes) {
		return
	}
	d.kept = slices.Clone(sizes)
	d.tell()
}

// MarkKeptSaved says that these kept sizes are on disk now. It tells nobody, as the bag
// that was saved with them follows; see MarkSpecSavedOn.
func (d *Document) MarkKeptSaved(sizes []project.KeptSize) { d.keptSaved = slices.Clone(sizes) }
