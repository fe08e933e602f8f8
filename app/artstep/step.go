// Package artstep is the part of the Artwork step with which artwork is put on the bag:
// the list of the pieces, the entries of the one that is chosen, and the profile of the
// printing condition. It belongs to fyne's goroutine.
package artstep

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
)

// Source brings files from disk into the document.
type Source interface {
	Add(place string, paths ...string) // place is "" for a free face
	Replace(index int, path string)
	ChooseProfile(path string)
	Watches(name string) bool // tells whether a file of the project is read again when it changes on disk
}

// Step is the content of the step.
type Step struct {
	*entry.Column

	doc    *document.Document
	look   *focus.Focus
	source Source
	window fyne.Window

	list    *list
	none    *entry.Text
	entries *entries
	profile *profile
	onFocus func(entry.Explained)
	chosen  int  // the index in Spec.Artwork
	entered bool // the step is shown
	loads   int  // of the document, as far as was shown
}

// New returns the step for a document. Files come from source; dialogs appear in window.
func New(doc *document.Document, look *focus.Focus, set *settings.Settings, source Source, window fyne.Window) *Step {
	s := &Step{doc: doc, look: look, source: source, window: window}
	add := widget.NewButton(lang.L("Add artwork…"), s.AskForFiles)
	s.none = entry.NewText(lang.L("Or drop PNG, JPEG, TIFF, WebP, SVG or PDF files on a panel of the blank."), entry.Muted)
	s.list = newList(s)
	s.entries = newEntries(s, set)
	s.profile = newProfile(s)
	s.Column = entry.NewColumn(3,
		entry.NewColumn(1.5, entry.NewText(lang.L("Artwork on the bag"), entry.Heading), newFlow(add), s.none, s.list),
		s.entries, s.profile)
	look.Listen(s.followFocus)
	return s
}

// OnFocus sets what is called when an entry gets the focus.
func (s *Step) OnFocus(call func(entry.Explained)) { s.onFocus = call }

func (s *Step) focused(e entry.Explained) {
	if s.onFocus != nil {
		s.onFocus(e)
	}
}

// Enter says that the step is shown from now on. The panes then show the frame of the
// piece that is chosen.
func (s *Step) Enter() {
	s.entered = true
	s.Follow(s.doc.State())
}

// Leave says that the step is not shown any more.
func (s *Step) Leave() {
	s.entered = false
	s.look.ChooseArtwork(focus.NoArtwork)
}

// Forget drops what was typed into entries and not taken over.
func (s *Step) Forget() { s.entries.forget() }

// Follow shows a state of the bag. Only what changed is touched.
func (s *Step) Follow(state document.State) {
	if state.Loads != s.loads {
		s.loads = state.Loads
		s.chosen = len(state.Spec.Artwork) - 1 // the topmost
	}
	s.chosen = max(min(s.chosen, len(state.Spec.Artwork)-1), 0)
	if s.entered {
		if len(state.Spec.Artwork) == 0 {
			s.look.ChooseArtwork(focus.NoArtwork)
		} else {
			s.look.ChooseArtwork(s.chosen)
		}
	}
	s.list.show(state, s.chosen)
	s.entries.show(state, s.chosen)
	s.profile.show(state)
}

// unfollowed tells of a piece that is shown whether changes to its file go unnoticed.
func (s *Step) unfollowed(state document.State, index int) bool {
	hung := state.Snapshot.Hung
	return s.source != nil && index < len(hung) && hung[index].Art != nil && !s.source.Watches(state.Spec.Artwork[index].File)
}

// followFocus takes over the piece that was chosen in a pane.
func (s *Step) followFocus() {
	if index := s.look.Artwork(); s.entered && index != focus.NoArtwork && index != s.chosen {
		s.chosen = index
		s.Follow(s.doc.State())
	}
}

// Choose chooses a piece by its index in Spec.Artwork.
func (s *Step) Choose(index int) {
	s.chosen = index
	s.Follow(s.doc.State())
}

// change changes the piece that is chosen; the bag is the same where there is none.
func (s *Step) change(change func(*bag.Artwork)) bag.Spec {
	spec := s.doc.State().Spec
	if s.chosen >= len(spec.Artwork) {
		return spec
	}
	spec.Artwork = cloned(spec.Artwork)
	change(&spec.Artwork[s.chosen])
	return spec
}

// cloned returns a copy of a list of artwork, which is never changed in place.
func cloned(list []bag.Artwork) []bag.Artwork { return append([]bag.Artwork(nil), list...) }

// remove takes the chosen piece out.
func (s *Step) remove() {
	spec := s.doc.State().Spec
	if s.chosen >= len(spec.Artwork) {
		return
	}
	list := cloned(spec.Artwork)
	spec.Artwork = append(list[:s.chosen], list[s.chosen+1:]...)
	s.doc.Set(spec)
}

// order brings the chosen piece so many places forward, or sends it back.
func (s *Step) order(by int) {
	spec := s.doc.State().Spec
	to := s.chosen + by
	if s.chosen >= len(spec.Artwork) || to < 0 || to >= len(spec.Artwork) {
		return
	}
	spec.Artwork = cloned(spec.Artwork)
	spec.Artwork[s.chosen], spec.Artwork[to] = spec.Artwork[to], spec.Artwork[s.chosen]
	s.chosen = to
	s.doc.Set(spec)
}
