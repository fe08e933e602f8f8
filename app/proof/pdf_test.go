package proof

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"gussetwright/app/document"
	"gussetwright/app/plain"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/phrase"
)

// kinds are bags of every construction that looks different in a proof.
var kinds = map[string]struct {
	change func(*bag.Spec)
	says   []string // in the file
	unsaid []string // not in it
}{
	"with artwork": {nil, []string{
		"240 mm wide, 100 mm deep, 360 mm high", "Large enough for", "Height without the handles; about 545 mm with them", "Gloss coated paper", "white, paper weight 170 g/m²", "Rope, knotted inside",
		"Plain, without film", "1000 bags", "Front", "Back", "Side", "Inside, seen from above", "Base, seen from below", "drinks can, 115 mm high",
		"For the printer: Light green, background (C 20 M 0 Y 10 K 0)", "(C 90 M 70 Y 10 K 5)", "(sRGB 176 40 24)",
	}, []string{"On brown paper"}},
	"in two pieces": {func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo }, []string{"Base, seen from below"}, nil},
	"with a pinch base, without handle": {func(s *bag.Spec) {
		s.Body.Base, s.Handle.Kind = bag.BasePinch, bag.HandleNone
	}, []string{"Folded over and glued", "No handle"}, []string{"Base, seen from below", "without the handles"}},
	"on kraft": {func(s *bag.Spec) {
		s.Paper.Kind, s.Paper.Colour, s.Handle.Kind, s.Body.Top = bag.PaperKraft, bag.ColourNatural, bag.HandleTwisted, bag.TopZigzag
	}, []string{"Kraft paper", "natural brown", "Twisted paper cord, glued inside", "Cut in a zigzag", "On brown paper"}, nil},
	"flat": {func(s *bag.Spec) {
		flat := bag.OfSize(160, 0, 240)
		flat.Name, flat.Handle.Kind = s.Name, bag.HandleHandHole
		*s = flat
	}, []string{"160 mm wide, 240 mm high, flat", "Hand hole in the paper"}, []string{"Side", "Inside, seen from above", "sRGB"}},
	"with much to mend": {func(s *bag.Spec) {
		s.Body.BaseOverlap, s.Body.SeamFlap, s.Paper.Grammage, s.Handle.Drop = 3, 8, 60, 6
	}, []string{
		"Must be solved before the bag can be made", "The bottom of the bag cannot be glued like this.",
		"The glued seam of the bag is narrow and may not hold.", "The paper is thin for a bag of this kind",
	}, nil},
	"very large": {func(s *bag.Spec) {
		s.Body.Width, s.Body.Gusset, s.Body.Height = 600, 250, 700
	}, []string{"a sheet of A4 paper, 297 mm high"}, []string{"drinks can"}},
}

// unknown are words that a client does not know, and those that codes are made of.
var unknown = regexp.MustCompile(`(?i)die.?line|\blayers?\b|\bblank\b|spot colour|bleed|gripper|gusset|flap|crease|\bgrain\b|turn-in|\b[a-z]+-[a-z]+-(short|long|near|low|wide)\b`)

func TestPDFSaysWhatTheBagIs(t *testing.T) {
	for name, kind := range kinds {
		t.Run(name, func(t *testing.T) {
			p := proofOf(t, kind.change)
			path := inFile(t, "proof.pdf", written(t, p))
			text := read(t, path)
			mustChange, mayChange := p.open()
			open := slices.Concat(mustChange, mayChange)
			for _, want := range slices.Concat(open, kind.says, []string{
				"Ferrow Lake Bakery", "25 November 2026", p.Version, "Changes and remarks", "Approval", "Approved with the changes above",
				"Name and company", "Signature", "are not binding", "can only be estimated", "a test with a sample must confirm it",
			}) {
				if !strings.Contains(text, want) {
					t.Errorf("lacks %q: %s", want, text)
				}
			}
			for _, finding := range p.Snapshot.Findings {
				kind.unsaid = append(kind.unsaid, finding.Code, finding.Message.String()[1:])
			}
			for _, not := range kind.unsaid {
				if strings.Contains(text, not) {
					t.Errorf("says %q", not)
				}
			}
			if word := unknown.FindString(text); word != "" {
				t.Errorf("a client does not know %q", word)
			}
			if says := strings.Contains(text, "Still open: nothing"); says != (len(open) == 0) {
				t.Errorf("%d open points, says that there are none: %t", len(open), says)
			}
			if pages, size := pagesOf(t, path); pages < 1 || pages > 3 || size != "595.276 x 841.89 pts (A4)" {
				t.Errorf("%d pages of %s", pages, size)
			}
		})
	}
}

// The page that is signed says for what, in words and with a picture, as poppler finds
// them on it.
func TestSignedPageStandsAlone(t *testing.T) {
	for name, change := range map[string]func(*bag.Spec){
		"with nothing open": func(s *bag.Spec) { s.Artwork = nil }, "with much to mend": kinds["with much to mend"].change,
	} {
		p := proofOf(t, change)
		open := "Still open: nothing"
		count := OpenPoints(p.Snapshot)
		if count > 0 {
			open = fmt.Sprintf("Still open, as listed in this proof: %d", count)
		}
		if mends := strings.Contains(name, "to mend"); mends != (count > 1) {
			t.Errorf("%s: %d points are open", name, count)
		}
		path := inFile(t, "proof.pdf", written(t, p))
		last, _ := pagesOf(t, path)
		number := strconv.Itoa(last)
		text := strings.Join(strings.Fields(string(geomtest.Run(t, "pdftotext", "-f", number, "-l", number, path, "-"))), " ")
		for _, want := range []string{
			"Ferrow Lake Bakery", "240 mm wide, 100 mm deep, 360 mm high", "without the handles", "Gloss coated paper, white, paper weight",
			"Rope, knotted inside", "Version " + p.Version + " of 25 November 2026", open,
			"Approved", "Approved with the changes above", "Not approved: please show it again", "Signature",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the page to sign lacks %q: %s", name, want, text)
			}
		}
		images := string(geomtest.Run(t, "pdfimages", "-list", "-f", number, "-l", number, path))
		if !regexp.MustCompile(`\s360\s+480\s`).MatchString(images) {
			t.Errorf("%s: no picture of the bag on the page to sign:\n%s", name, images)
		}
	}
}

// pagesOf asks poppler's pdfinfo for the number and the size of pages.
func pagesOf(t *testing.T, path string) (count int, size string) {
	t.Helper()
	for line := range strings.Lines(string(geomtest.Run(t, "pdfinfo", path))) {
		name, value, _ := strings.Cut(line, ":")
		switch name {
		case "Pages":
			count, _ = strconv.Atoi(strings.TrimSpace(value))
		case "Page size":
			size = strings.TrimSpace(value)
		}
	}
	return count, size
}

func TestInchesAreOnLetter(t *testing.T) {
	p := proofOf(t, nil)
	p.Unit = geometry.Inch
	path := inFile(t, "proof.pdf", written(t, p))
	// 240, 100 and 360 mm over 25.4.
	if text := read(t, path); !strings.Contains(text, "9.45 in wide, 3.94 in deep, 14.17 in high") || strings.Contains(text, " mm ") {
		t.Errorf("says %s", text)
	}
	if _, size := pagesOf(t, path); size != "612 x 792 pts (letter)" {
		t.Errorf("paper %s", size)
	}
}

// More findings than a proof has room for are counted, errors are named first. All that
// there are have room, so here each is long.
func TestManyFindingsAreCounted(t *testing.T) {
	p := proofOf(t, nil)
	snapshot := *p.Snapshot
	for severity, table := range map[check.Severity]map[string]phrase.Word{check.Error: plain.Stops(), check.Warning: plain.Risks()} {
		for code := range table {
			snapshot.Findings = append(snapshot.Findings, check.Finding{Severity: severity, Code: code})
		}
	}
	check.Sort(snapshot.Findings)
	p.Snapshot = &snapshot
	mustChange, mayChange := p.open()
	p.Say = func(text string) string {
		if slices.Contains(mayChange, text) {
			return strings.Repeat(text+" ", 3)
		}
		return text
	}
	path := inFile(t, "proof.pdf", written(t, p))
	text := read(t, path)
	if pages, _ := pagesOf(t, path); pages != 3 {
		t.Errorf("%d pages", pages)
	}
	named := strings.Count(text, "•")
	counted := regexp.MustCompile(`found no room here: (\d+)`).FindStringSubmatch(text)
	if counted == nil || fmt.Sprint(len(mustChange)+len(mayChange)-named) != counted[1] || named < 10 {
		t.Errorf("%d named, counted %q: %s", named, counted, text)
	}
	for _, stop := range mustChange {
		if !strings.Contains(text, stop) {
			t.Errorf("%q is not named", stop)
		}
	}
}

// Every word that a client reads is asked of Say: none is the same when Say turns all
// letters into others, but for the name of the project and those of the trade.
func TestEveryWordIsTranslated(t *testing.T) {
	own := map[string]bool{"Ferrow": true, "Lake": true, "Bakery": true, "Gusset": true}
	turn := func(text string) string {
		turned := []rune(text)
		for i, r := range turned {
			isVerb := i > 0 && turned[i-1] == '%'
			if !isVerb && r < 128 && unicode.IsLetter(r) {
				turned[i] = 'ж'
			}
		}
		return string(turned)
	}
	for _, name := range []string{"with much to mend", "on kraft"} {
		p := proofOf(t, kinds[name].change)
		p.Say = turn
		pages, err := p.pages()
		if err != nil {
			t.Fatal(err)
		}
		page, err := p.page()
		if err != nil {
			t.Fatal(err)
		}
		said := fmt.Sprintf("%+v %+v %v %v %v %v %s", page.Facts, page.Swatches, page.Stops, page.Notes, page.Approved, page.Cautions, page.Described)
		said = regexp.MustCompile(`(Label|Value|Name|Colour):`).ReplaceAllString(said, "")
		for _, each := range pages {
			said += " " + strings.Join(textsOn(each), " ")
		}
		for _, word := range regexp.MustCompile(`[A-Za-z]{4,}`).FindAllString(said, -1) {
			// Names of files stand in findings as they are.
			if !own[word] && word != "lake" && word != "waves" {
				t.Errorf("%s: %q was not asked of Say", name, word)
			}
		}
	}
}

// Words of twice the length stay on the paper and within three pages. Boxes of words as
// poppler finds them.
func TestLongWordsStayWithinTheMargins(t *testing.T) {
	p := proofOf(t, kinds["with much to mend"].change)
	p.Say = func(text string) string {
		if strings.Contains(text, "%") || len(text) < 4 {
			return text
		}
		return text + "-" + strings.ReplaceAll(text, " ", "")
	}
	path := inFile(t, "proof.pdf", written(t, p))
	if pages, _ := pagesOf(t, path); pages > 3 {
		t.Errorf("%d pages", pages)
	}
	decoder := xml.NewDecoder(bytes.NewReader(geomtest.Run(t, "pdftotext", "-bbox", path, "-")))
	words := 0
	for token, _ := decoder.Token(); token != nil; token, _ = decoder.Token() {
		element, isStart := token.(xml.StartElement)
		if !isStart || element.Name.Local != "word" {
			continue
		}
		words++
		const point = 72 / 25.4
		for _, a := range element.Attr {
			at, err := strconv.ParseFloat(a.Value, 64)
			if err != nil {
				t.Fatal(err)
			}
			low, high := (margin-1)*point, (210-margin+1)*point
			if strings.HasPrefix(a.Name.Local, "y") {
				high = (297 - margin + 1) * point
			}
			if at < low || at > high {
				t.Errorf("a word lies at %s = %g, outside of %g to %g", a.Name.Local, at, low, high)
			}
		}
	}
	if words < 100 {
		t.Errorf("only %d words", words)
	}
}

func TestSameOrderGivesSameBytes(t *testing.T) {
	for name, write := range map[string]func(*Proof, *bytes.Buffer) error{
		"PDF":     func(p *Proof, out *bytes.Buffer) error { return p.PDF(out) },
		"page":    func(p *Proof, out *bytes.Buffer) error { return p.Page(out) },
		"picture": func(p *Proof, out *bytes.Buffer) error { return p.Picture(out, Isometric) },
	} {
		var first, second bytes.Buffer
		if err := errors.Join(write(proofOf(t, nil), &first), write(proofOf(t, nil), &second)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("%s: other bytes the second time", name)
		}
	}
}

// Each file of a proof after the other has the bytes that it has alone.
func TestFilesDoNotDependOnEachOther(t *testing.T) {
	alone := written(t, proofOf(t, nil))
	after := proofOf(t, nil)
	var page bytes.Buffer
	if err := after.Page(&page); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(written(t, after), alone) {
		t.Error("after the page the PDF file is another")
	}
}

func TestVersionBelongsToOneState(t *testing.T) {
	version := func(change func(*bag.Spec, map[string][]byte)) string {
		spec, files := lakeBag()
		change(&spec, files)
		return New(context.Background(), Order{Snapshot: derive(t, spec, files), Date: day}).Version
	}
	same := version(func(*bag.Spec, map[string][]byte) {})
	if !regexp.MustCompile(`^[0-9a-f]{6}$`).MatchString(same) {
		t.Errorf("version %q", same)
	}
	if saved := version(func(s *bag.Spec, _ map[string][]byte) { s.Date = "2026-11-25" }); saved != same {
		t.Errorf("saving makes %q of %q", saved, same)
	}
	for name, change := range map[string]func(*bag.Spec, map[string][]byte){
		"entry": func(s *bag.Spec, _ map[string][]byte) { s.Body.Height++ },
		"name":  func(s *bag.Spec, _ map[string][]byte) { s.Name += "s" },
		"colour": func(_ *bag.Spec, f map[string][]byte) {
			f["lake.svg"] = bytes.Replace(f["lake.svg"], []byte("#b02818"), []byte("#b02817"), 1)
		},
		"no artwork":  func(s *bag.Spec, _ map[string][]byte) { s.Artwork = nil },
		"placed else": func(s *bag.Spec, _ map[string][]byte) { s.Artwork[0].X = 2 },
	} {
		if other := version(change); other == same {
			t.Errorf("%s: still version %q", name, other)
		}
	}
	if given := New(context.Background(), Order{Snapshot: derive(t, bag.Default(), nil), Date: day, Version: "B"}).Version; given != "B" {
		t.Errorf("version %q, given as B", given)
	}
}

func TestArtworkThatCannotBeShownIsAnError(t *testing.T) {
	spec, files := lakeBag()
	files["waves.png"] = files["waves.png"][:100]
	broken := derive(t, spec, files)
	waiting := *broken
	waiting.Hung = []document.Hanging{{}, {}}
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	for _, c := range []struct {
		name     string
		ctx      context.Context
		snapshot *document.Snapshot
		says     string
	}{
		{"broken", context.Background(), broken, "waves.png"},
		{"being opened", context.Background(), &waiting, "still being opened"},
		{"cancelled", cancelled, derive(t, bag.Default(), nil), "context canceled"},
	} {
		p := New(c.ctx, Order{Snapshot: c.snapshot, Date: day})
		for kind, write := range map[string]func(*bytes.Buffer) error{
			"PDF":     func(out *bytes.Buffer) error { return p.PDF(out) },
			"page":    func(out *bytes.Buffer) error { return p.Page(out) },
			"picture": func(out *bytes.Buffer) error { return p.Picture(out, Front) },
		} {
			var out bytes.Buffer
			if err := write(&out); err == nil || !strings.Contains(err.Error(), c.says) || out.Len() > 0 {
				t.Errorf("%s, %s: error %v, %d bytes written; want one that says %q", c.name, kind, err, out.Len(), c.says)
			}
		}
	}
}
