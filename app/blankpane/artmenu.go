package blankpane

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry/bag"
)

// removeArt takes the artwork that is being placed out of the bag.
func (s *surface) removeArt() {
	s.changeArt(func(list []bag.Artwork, index int) []bag.Artwork { return slices.Delete(list, index, index+1) })
}

// orderArt brings the artwork that is being placed so many places forward, or sends it
// back. It stays the one that is being placed.
func (s *surface) orderArt(by int) {
	s.changeArt(func(list []bag.Artwork, index int) []bag.Artwork {
		to := index + by
		if to < 0 || to >= len(list) {
			return nil
		}
		list[index], list[to] = list[to], list[index]
		s.pane.look.ChooseArtwork(to)
		return list
	})
}

// changeArt changes the list of artwork in one step to undo. change gets a copy of it and
// the index of the piece that is being placed, and returns nil to leave all as it is.
func (s *surface) changeArt(change func(list []bag.Artwork, index int) []bag.Artwork) {
	spec, index := s.pane.doc.State().Spec, s.pane.look.Artwork()
	if s.drag != nil || index < 0 || index >= len(spec.Artwork) {
		return
	}
	if list := change(slices.Clone(spec.Artwork), index); list != nil {
		spec.Artwork = list
		s.pane.doc.Set(spec)
	}
}

// TappedSecondary is part of fyne.SecondaryTappable. On artwork, while artwork is being
// placed, it offers what the list of artwork offers.
func (s *surface) TappedSecondary(ev *fyne.PointEvent) {
	pixel := pixelAt(ev.Position)
	s.chooseArt(pixel)
	if grip := s.artAt(pixel); grip.handle != noHandle {
		s.artMenu(ev.Position)
	}
}

// artMenuAtFrame opens the menu from the keyboard, at a corner of the frame.
func (s *surface) artMenuAtFrame() {
	if frames := s.pane.artFrames(); len(frames) > 0 {
		s.artMenu(position(s.pane.onScreen(&frames[0])[3]))
	}
}

// artMenu opens the menu of the artwork that is being placed, at a place of the surface.
func (s *surface) artMenu(at fyne.Position) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(s); on != nil {
		corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(s)
		widget.ShowPopUpMenuAtPosition(s.artActions(), on, corner.Add(at))
	}
}

// artActions returns what can be done with the artwork that is being placed.
func (s *surface) artActions() *fyne.Menu {
	index, count := s.pane.look.Artwork(), len(s.pane.state.Spec.Artwork)
	forward := fyne.NewMenuItem(lang.L("Bring forward"), func() { s.orderArt(1) })
	forward.Disabled = index >= count-1
	back := fyne.NewMenuItem(lang.L("Send back"), func() { s.orderArt(-1) })
	back.Disabled = index <= 0
	remove := fyne.NewMenuItem(lang.L("Remove"), s.removeArt)
	return fyne.NewMenu("", forward, back, fyne.NewMenuItemSeparator(), remove)
}
