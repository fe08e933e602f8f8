package document

import (
	"context"
	"errors"
	"image"
	"image/color"
	"slices"
	"sync"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/geometry/sheet/advice"
	"gussetwright/render/artcheck"
	"gussetwright/render/artwork"
	"gussetwright/render/ink"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
)

// Hanging is the artwork of one entry of Spec.Artwork: opened, or the reason why it
// cannot be shown, or neither while it is being opened.
type Hanging = artcheck.Piece

// Gallery opens artwork and keeps it open. Art returns at once; while a file is being
// opened it returns neither artwork nor an error.
type Gallery interface {
	Art(name string, data []byte, page int) (*artwork.Art, error)
}

// Missing is the error of artwork whose file is not in the project.
func Missing(name string) error {
	return phrase.Errorf("%q is missing from the project; add the file again, or take the artwork out", name)
}

// hangings returns the artwork of a spec as far as the gallery has it.
func hangings(spec *bag.Spec, files map[string][]byte, gallery Gallery) []Hanging {
	if gallery == nil {
		return nil
	}
	hung := make([]Hanging, len(spec.Artwork))
	for i := range spec.Artwork {
		name := spec.Artwork[i].File
		if data, found := files[name]; found {
			hung[i].Art, hung[i].Err = gallery.Art(name, data, int(spec.Artwork[i].Page))
		} else {
			hung[i].Err = Missing(name)
		}
	}
	return hung
}

// hang puts the artwork and the profile on a bag that was just derived.
func (s *Snapshot) hang(files map[string][]byte, gallery Gallery) {
	s.wear(hangings(&s.Spec, files, gallery), files[s.Spec.Profile])
}

func (s *Snapshot) wear(hung []Hanging, profile []byte) {
	s.Profile, s.Hung = profile, hung
	s.Placed = placement.Lay(&s.Blank, s.source)
	s.add(artcheck.Inspect(&s.Blank, s.Hung, s.Placed))
}

// Member derives a bag of the same family: another size with the artwork and the
// profile of this one. The error is that of Validate.
func (s *Snapshot) Member(spec bag.Spec) (*Snapshot, error) {
	member, err := Derive(spec)
	if err != nil {
		return nil, err
	}
	member.wear(s.Hung, s.Profile)
	return member, nil
}

// add adds findings, errors first.
func (s *Snapshot) add(findings []check.Finding) {
	s.Findings = append(slices.Clone(s.Findings), findings...)
	check.Sort(s.Findings)
}

// Look returns what takes longer to find than a bag may wait for in a drag: what only the
// pixels of the artwork tell, and what would make the sheet hold more; see artcheck.Look
// and advice.Note. It returns nothing when ctx ends early.
func (s *Snapshot) Look(ctx context.Context) []check.Finding {
	white := color.RGBA{R: 255, G: 255, B: 255, A: 255}
	sides := make([]*printed.Side, len(s.Blank.Pieces))
	for i := range sides {
		sides[i] = s.side(i, white)
	}
	findings := artcheck.Look(ctx, &s.Blank, s.Placed, sides)
	if ctx.Err() != nil {
		return nil
	}
	if note, found := advice.Note(&s.Blank, &s.Plan); found {
		findings = append(findings, note)
	}
	return findings
}

// DeriveWithArt derives a bag with the artwork in files, all of it opened and looked
// at before it returns. Artwork that cannot be opened has its reason in Hung.
func DeriveWithArt(ctx context.Context, spec bag.Spec, files map[string][]byte) (*Snapshot, error) {
	snapshot, err := Derive(spec)
	if err != nil {
		return nil, err
	}
	snapshot.hang(files, openAll(ctx, &spec, files))
	return snapshot.with(snapshot.Look(ctx)), ctx.Err()
}

// atOnce is how many files are opened side by side: opening a large picture takes many
// times the memory that is kept of it.
const atOnce = 2

// shelf is a gallery of artwork that was opened before.
type shelf map[page]*Hanging

// page tells the pages of files apart.
type page struct {
	name   string
	number int
}

// Art is part of Gallery.
func (s shelf) Art(name string, _ []byte, number int) (*artwork.Art, error) {
	hanging := s[page{name, number}]
	return hanging.Art, hanging.Err
}

// openAll opens every page of artwork once.
func openAll(ctx context.Context, spec *bag.Spec, files map[string][]byte) shelf {
	opened := shelf{}
	room := make(chan struct{}, atOnce)
	var all sync.WaitGroup
	for i := range spec.Artwork {
		key := page{spec.Artwork[i].File, int(spec.Artwork[i].Page)}
		data, found := files[key.name]
		if opened[key] != nil || !found {
			continue
		}
		hanging := &Hanging{}
		opened[key] = hanging
		all.Go(func() {
			room <- struct{}{}
			hanging.Art, hanging.Err = artwork.Open(ctx, key.name, data, key.number)
			<-room
		})
	}
	all.Wait()
	return opened
}

// Opening tells whether artwork is still being opened.
func (s *Snapshot) Opening() bool {
	return slices.ContainsFunc(s.Hung, func(h Hanging) bool { return h.Art == nil && h.Err == nil })
}

// ArtError joins the reasons why artwork cannot be shown.
func (s *Snapshot) ArtError() error {
	var reasons []error
	for _, hanging := range s.Hung {
		reasons = append(reasons, hanging.Err)
	}
	return errors.Join(reasons...)
}

func (s *Snapshot) source(index int) (placement.Source, bool) {
	if index >= len(s.Hung) || s.Hung[index].Art == nil {
		return placement.Source{}, false
	}
	return s.Hung[index].Art.Source, true
}

func (s *Snapshot) levels(index int) []*image.RGBA {
	if index >= len(s.Hung) || s.Hung[index].Art == nil {
		return nil
	}
	return s.Hung[index].Art.Levels
}

// Side returns the print side of a piece of the blank, ready to be painted.
func (s *Snapshot) Side(piece int) *printed.Side {
	return s.side(piece, solid.PaperOf(s.Spec.Paper).Print)
}

func (s *Snapshot) side(piece int, paper color.RGBA) *printed.Side {
	b := s.Spec.Print.Background
	background := ink.RGB(b.Cyan/100, b.Magenta/100, b.Yellow/100, b.Black/100)
	return printed.NewSide(&s.Blank, piece, s.Placed, s.levels, paper, background)
}

// with returns the snapshot with further findings.
func (s *Snapshot) with(findings []check.Finding) *Snapshot {
	more := *s
	more.looked = true
	more.add(findings)
	return &more
}

// LookedAt returns the snapshot with the findings of Look, itself where it has them. The
// error is that of ctx when it ends early.
func (s *Snapshot) LookedAt(ctx context.Context) (*Snapshot, error) {
	if s.looked {
		return s, nil
	}
	found := s.Look(ctx)
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return s.with(found), nil
}

// Looked tells whether the findings of Look are among those of the snapshot.
func (s *Snapshot) Looked() bool {
	return s.looked
}
