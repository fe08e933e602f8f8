package proof

import (
	"bytes"
	"image"
	"io"
	"math"
	"strings"

	"gussetwright/geometry/phrase"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
	"gussetwright/render/turntable"
)

// Of the page for a browser.
const (
	mostPage        = 2_000_000 // bytes, so that it can be sent by mail
	mostPageTexture = 6_000_000 // pixels of all pieces
	longestTexture  = 4096      // pixels of a side that every browser takes
	coarser         = 0.75      // what a page that is too large is tried at next
	leastTexture    = 0.5       // pixels per mm
	stillWidth      = 1200
	stillHeight     = 900
	stillEdge       = 70
)

// Page writes the page on which a browser shows the bag and lets it be turned. It stays
// below 2 MB; the print is shown coarser where it would not.
func (p *Proof) Page(w io.Writer) error {
	page, err := p.page()
	if err != nil {
		return phrase.Errorf("make the page of the proof: %s", err)
	}
	for scale := p.pageScale(); ; scale *= coarser {
		if err := p.ctx.Err(); err != nil {
			return phrase.Errorf("make the page of the proof: %s", err)
		}
		page.Textures = p.pageTextures(scale)
		var out bytes.Buffer
		if err := turntable.Write(&out, page); err != nil {
			return phrase.Errorf("make the page of the proof: %s", err)
		}
		if out.Len() < mostPage || scale < leastTexture {
			_, err := out.WriteTo(w)
			return err
		}
	}
}

// page returns the page without its textures.
func (p *Proof) page() (turntable.Page, error) {
	s, err := p.onStage(pageTexture)
	if err != nil {
		return turntable.Page{}, err
	}
	colours, err := p.swatches()
	if err != nil {
		return turntable.Page{}, err
	}
	page := turntable.Page{
		Language: p.language(), Title: p.title(), Words: p.pageWords(),
		Mesh: s.model.Mesh(), Paper: s.paper, Still: p.still(s), Small: s.smallPicture(),
		Described: p.described(colours), Cautions: p.cautions(),
		Facts: []turntable.Fact{{Label: p.say("Size"), Value: strings.Join(p.sizes(), "\n")}},
	}
	if room := p.room(); room != "" {
		page.Facts = append(page.Facts, turntable.Fact{Label: p.say("Room"), Value: room})
	}
	for _, f := range p.facts() {
		page.Facts = append(page.Facts, turntable.Fact{Label: f.label, Value: f.value})
	}
	for _, c := range colours {
		page.Swatches = append(page.Swatches, turntable.Swatch{Name: c.name, Colour: c.shown, Value: c.value})
	}
	page.Stops, page.Notes = p.open()
	page.Approved = append(p.approved(len(page.Stops)+len(page.Notes)), p.onlyThis())
	return page, nil
}

// described returns the bag in words, for those who do not see it.
func (p *Proof) described(colours []swatch) string {
	said := []string{
		p.title() + ": " + p.size() + ".",
		p.tell(phrase.New("Paper: %s.", inOneLine(p.paper()))),
		p.tell(phrase.New("Handle: %s.", handleWord(p.Snapshot.Spec.Handle))),
	}
	var names []string
	for _, c := range colours {
		names = append(names, c.name)
	}
	if len(names) > 0 {
		said = append(said, p.tell(phrase.New("Colours: %s.", strings.Join(names, "; "))))
	}
	return strings.Join(said, " ")
}

// still returns the picture where nothing can be turned.
func (p *Proof) still(s *stage) image.Image {
	v := s.view(solid.Isometric, softLook())
	v.Width, v.Height = stillWidth, stillHeight
	fit(&v, s.outline(v), image.Rect(0, 0, v.Width, v.Height).Inset(stillEdge))
	return s.draw(v)
}

// pageScale returns the pixels per mm of the print at first.
func (p *Proof) pageScale() float64 {
	area, scale := 0.0, pageTexture
	for i := range p.Snapshot.Blank.Pieces {
		piece := &p.Snapshot.Blank.Pieces[i]
		area += piece.Width * piece.Height
		scale = min(scale, longestTexture/max(piece.Width, piece.Height))
	}
	return min(scale, math.Sqrt(mostPageTexture/area))
}

func (p *Proof) pageTextures(scale float64) []turntable.Texture {
	textures := make([]turntable.Texture, len(p.Snapshot.Blank.Pieces))
	for i := range textures {
		piece := &p.Snapshot.Blank.Pieces[i]
		if side := p.Snapshot.Side(i); !side.Bare() {
			textures[i] = turntable.Texture{Picture: side.Picture(piece, scale, printed.Fine), Scale: scale, Height: piece.Height}
		}
	}
	return textures
}

// pageWords returns the words of the page that are the same for every bag.
func (p *Proof) pageWords() turntable.Words {
	return turntable.Words{
		Bag: p.say("The folded bag"), Turn: p.say("Drag or press the arrow keys to turn, pinch or scroll to zoom"), Views: p.say("Views"),
		Slant: p.say("At an angle"), Front: p.say("Front"), Right: p.say("Right"), Back: p.say("Back"), Left: p.say("Left"), Above: p.say("From above"),
		Excuse:  p.say("Turning the bag needs a newer browser. This is a still picture."),
		Colours: p.say("Colours"), Printer: p.say("For the printer"), Open: p.say("Still open"),
		Must: p.say("Must be solved before the bag can be made"), May: p.say("To be decided, or accepted as it is"),
		Approval: p.say("Approval"), HowToApprove: p.say("Fill in, then print or save as PDF. Nothing is sent."),
		Changes: p.say("Changes and remarks"), Yes: p.say("Approved"), YesWithChanges: p.say("Approved with the changes above"),
		No:   p.say("Not approved: please show it again"),
		Name: p.say("Name and company"), Date: p.say("Date"), Signature: p.say("Signature"), Print: p.say("Print"),
	}
}
