package document_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/render/artwork"
)

const leaf = `<svg xmlns="http://www.w3.org/2000/svg" width="246mm" height="366mm"><rect width="99" height="99"/></svg>`

// shelf is a gallery that opens files when it is told to.
type shelf struct {
	open   bool
	opened []string // the content of what was asked for
}

func (s *shelf) Art(name string, data []byte, page int) (*artwork.Art, error) {
	s.opened = append(s.opened, string(data))
	if !s.open {
		return nil, nil
	}
	return artwork.Open(context.Background(), name, data, page)
}

func hung(doc *document.Document, name string) {
	spec := doc.State().Spec
	spec.Artwork = append(slices.Clone(spec.Artwork), bag.NewArtwork(name, "front"))
	doc.Set(spec)
}

func TestArtworkIsShownOnceItIsOpened(t *testing.T) {
	doc, gallery := document.New(), &shelf{}
	doc.ShowArt(gallery)
	hung(doc, doc.PutFile("leaf.svg", []byte(leaf)))
	if s := doc.State().Snapshot; !s.Opening() || len(s.Placed) != 0 || !s.Side(0).Bare() {
		t.Errorf("opening %t, placed %v", s.Opening(), s.Placed)
	}
	told := 0
	doc.Listen(func(document.State) { told++ })
	gallery.open = true
	doc.Renew()
	if s := doc.State().Snapshot; told != 1 || s.Opening() || len(s.Placed) != 1 || s.Side(0).Bare() {
		t.Errorf("told %d times; opening %t, placed %v", told, s.Opening(), s.Placed)
	}
}

func TestMissingFileIsAFinding(t *testing.T) {
	doc := document.New()
	doc.ShowArt(&shelf{open: true})
	hung(doc, "gone.pdf")
	s := doc.State().Snapshot
	if err := s.ArtError(); err == nil || !strings.Contains(err.Error(), `"gone.pdf" is missing from the project`) {
		t.Errorf("error %v", err)
	}
	if !slices.ContainsFunc(s.Findings, func(f check.Finding) bool {
		return f.Code == "artwork-unreadable" && f.Severity == check.Error
	}) || !slices.IsSortedFunc(s.Findings, func(a, b check.Finding) int { return rank(a) - rank(b) }) {
		t.Errorf("findings %v", s.Findings)
	}
}

func rank(f check.Finding) int {
	return slices.Index([]check.Severity{check.Error, check.Warning, check.Note}, f.Severity)
}

// Two files of one name do not overwrite each other, not even where names differ only
// in capitals; the same file added twice is kept once.
func TestPutFileKeepsFilesApart(t *testing.T) {
	doc := document.New()
	for _, c := range []struct{ name, data, want string }{
		{"leaf.svg", "a", "leaf.svg"},
		{"leaf.svg", "a", "leaf.svg"},
		{"leaf.svg", "b", "leaf-2.svg"},
		{"LEAF.svg", "c", "LEAF-3.svg"},
		{"leaf.svg", "b", "leaf-2.svg"},
		{"plain", "d", "plain"},
		{"plain", "e", "plain-2"},
	} {
		got := doc.PutFile(c.name, []byte(c.data))
		data, found := doc.File(got)
		if got != c.want || !found || string(data) != c.data {
			t.Errorf("%s with %q is kept as %s with %q, want %s", c.name, c.data, got, data, c.want)
		}
	}
}

// A file goes with the last state that names it, and not before.
func TestFilesGoWithTheHistory(t *testing.T) {
	d := document.New()
	bare := d.State().Spec
	with := func(name string) bag.Spec {
		spec := bare
		spec.Artwork = []bag.Artwork{bag.NewArtwork(d.PutFile(name, []byte(name)), "front")}
		return spec
	}
	d.Set(with("a.png"))
	d.Set(bare)
	d.Undo()
	d.Undo()
	d.PutFile("waiting.png", nil) // put in, and not named yet
	if _, found := d.File("a.png"); !found {
		t.Error("a file is gone that redo brings back")
	}
	d.Redo()
	d.Set(with("b.png")) // after a state that names a.png
	for _, name := range []string{"a.png", "b.png", "waiting.png"} {
		if _, found := d.File(name); !found {
			t.Errorf("%s is gone, and undo or what comes next needs it", name)
		}
	}
	d.Undo()
	d.Undo()
	wider := bare
	wider.Body.Width += 10
	d.Set(wider)
	for name, want := range map[string]bool{"a.png": false, "b.png": false, "waiting.png": true} {
		if _, found := d.File(name); found != want {
			t.Errorf("after another way was taken: %s is there: %v, want %v", name, found, want)
		}
	}
}

func TestReplacedFileIsShownAndToBeSaved(t *testing.T) {
	doc, gallery := document.New(), &shelf{open: true}
	doc.ShowArt(gallery)
	hung(doc, doc.PutFile("leaf.svg", []byte(leaf)))
	doc.MarkSaved()
	doc.ReplaceFile("leaf.svg", []byte(leaf))
	if doc.State().Dirty {
		t.Error("the same content again makes a change")
	}
	gallery.opened = nil
	newer := strings.Replace(leaf, "99", "88", 1)
	doc.ReplaceFile("leaf.svg", []byte(newer))
	if state := doc.State(); !state.Dirty || len(gallery.opened) == 0 || gallery.opened[len(gallery.opened)-1] != newer {
		t.Errorf("dirty %t, opened %q", state.Dirty, gallery.opened)
	}
	if saved := doc.Project(); string(saved.Files["leaf.svg"]) != newer {
		t.Error("the newer content is not what is saved")
	}
	doc.ReplaceFile("other.svg", []byte(leaf))
	if _, found := doc.File("other.svg"); found {
		t.Error("a file that the project does not have was added")
	}
}

// Renewing while the bag cannot be drawn keeps the last picture of it.
func TestRenewWhileTheBagCannotBeDrawn(t *testing.T) {
	doc := document.New()
	doc.Set(width(doc, 5))
	doc.Renew()
	if state := doc.State(); state.Err == nil || state.Snapshot == nil {
		t.Errorf("error %v, snapshot %v", state.Err, state.Snapshot)
	}
}

// Findings that come late are added to the bag they are about, and to no other.
func TestLateFindings(t *testing.T) {
	doc := document.New()
	late := []check.Finding{{Severity: check.Error, Code: "late"}}
	before := doc.State().Snapshot
	doc.Found(before, late)
	now := doc.State().Snapshot
	if !now.Looked() || before.Looked() || now.Findings[0].Code != "late" || len(now.Findings) != len(before.Findings)+1 {
		t.Errorf("findings %v", now.Findings)
	}
	doc.Found(before, late)
	if doc.State().Snapshot != now {
		t.Error("findings about a bag that is gone are taken")
	}
}

func TestDeriveWithArtEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("leaf.svg", "front")}
	_, err := document.DeriveWithArt(ctx, spec, map[string][]byte{"leaf.svg": []byte(leaf)})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v", err)
	}
}

func TestDeriveWithArtOpensEachFileOnce(t *testing.T) {
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("leaf.svg", "front"), bag.NewArtwork("leaf.svg", "back"), bag.NewArtwork("gone.svg", "back"), bag.NewArtwork("bad.svg", "back")}
	snapshot, err := document.DeriveWithArt(context.Background(), spec, map[string][]byte{"leaf.svg": []byte(leaf), "bad.svg": []byte("<svg")})
	if err != nil {
		t.Fatal(err)
	}
	hung := snapshot.Hung
	if hung[0].Art == nil || hung[0].Art != hung[1].Art || hung[2].Art != nil || hung[3].Art != nil {
		t.Errorf("hung %v", hung)
	}
	if err := hung[3].Err; err == nil || !strings.Contains(err.Error(), `"bad.svg"`) || strings.Contains(err.Error(), "gone") {
		t.Errorf("error %v", err)
	}
	if hung[0].Art != nil && hung[0].Art.Source.Size.X != 246 {
		t.Errorf("source %v", hung[0].Art.Source)
	}
	for _, p := range snapshot.Placed {
		if p.Index > 1 {
			t.Errorf("something is placed of what is missing: %v", p)
		}
	}
}

// The profile of a project comes with its snapshot.
func TestProfileComesWithTheSnapshot(t *testing.T) {
	spec := bag.Default()
	spec.Profile = "press.icc"
	doc := document.New()
	doc.Load(project.Project{Spec: spec, Files: map[string][]byte{"press.icc": []byte("profile")}})
	if got := string(doc.State().Snapshot.Profile); got != "profile" {
		t.Errorf("profile %q", got)
	}
}

// A look is made once, and one that ends early gives no snapshot that lacks its findings.
func TestLookedAt(t *testing.T) {
	snapshot, err := document.Derive(bag.Default())
	if err != nil {
		t.Fatal(err)
	}
	looked, err := snapshot.LookedAt(context.Background())
	if err != nil || !looked.Looked() || snapshot.Looked() {
		t.Errorf("looked %t, before %t, %v", looked.Looked(), snapshot.Looked(), err)
	}
	if again, err := looked.LookedAt(context.Background()); again != looked || err != nil {
		t.Errorf("it is looked at twice: %v", err)
	}
	ended, end := context.WithCancel(context.Background())
	end()
	if _, err := snapshot.LookedAt(ended); !errors.Is(err, context.Canceled) {
		t.Errorf("without time to look: %v", err)
	}
}
