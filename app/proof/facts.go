package proof

import (
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/phrase"
)

// fact is something to know about the bag, under its label. The value may have two
// lines.
type fact struct{ label, value string }

// size returns the size of the bag in words.
func (p *Proof) size() string {
	b := p.Snapshot.Spec.Body
	if b.Gusset == 0 {
		return p.tell(phrase.New("%s wide, %s high, flat", p.length(b.Width), p.length(b.Height)))
	}
	return p.tell(phrase.New("%s wide, %s deep, %s high", p.length(b.Width), p.length(b.Gusset), p.length(b.Height)))
}

// handleNote says how high the bag is with its handles; "" where they add nothing.
func (p *Proof) handleNote() string {
	top := p.Snapshot.Spec.Body.Height
	for _, cord := range fold.Standing(&p.Snapshot.Blank).Cords {
		for _, at := range cord.Path {
			top = max(top, at.Z+cord.Wide)
		}
	}
	if top <= p.Snapshot.Spec.Body.Height+geometry.Tolerance {
		return ""
	}
	return p.tell(phrase.New("Height without the handles; about %s with them", p.about(top)))
}

// sizes returns the size with what is to be known about it, in lines.
func (p *Proof) sizes() []string {
	if note := p.handleNote(); note != "" {
		return []string{p.size(), note}
	}
	return []string{p.size()}
}

// room returns what fits into the bag, "" where nothing that everybody knows does.
func (p *Proof) room() string {
	b := p.Snapshot.Spec.Body
	name, fits := held(b.Width, b.Gusset, b.Height)
	if !fits {
		return ""
	}
	return p.tell(phrase.New("Large enough for %s", name))
}

// facts returns all that is settled about the bag.
func (p *Proof) facts() []fact {
	spec := &p.Snapshot.Spec
	return []fact{
		{p.say("Paper"), p.paper()},
		{p.say("Handle"), p.say(handleWord(spec.Handle))},
		{p.say("Finish"), p.say(finishWord(spec.Paper.Lamination))},
		{p.say("Top edge"), p.say(topWord(spec.Body.Top, spec.Cards.Top))},
		{p.say("Base"), p.say(baseWord(spec.Body, spec.Cards.Base))},
		{p.say("Quantity"), p.tell(phrase.New("%s bags", p.number(spec.Run.Quantity, 0)))},
		{p.say("Version"), p.Version + "\n" + p.say("another one after every change")},
		{p.say("Date"), p.day()},
	}
}

func (p *Proof) paper() string {
	paper := p.Snapshot.Spec.Paper
	weight := phrase.New("%s, paper weight %s", colourWord(paper.Colour), p.number(paper.Grammage, 0)+space+"g/m²")
	return p.say(paperWord(paper.Kind)) + "\n" + p.tell(weight)
}

func paperWord(kind bag.PaperKind) phrase.Word {
	switch kind {
	case bag.PaperGloss:
		return "Gloss coated paper"
	case bag.PaperMatt:
		return "Matt coated paper"
	case bag.PaperKraft:
		return "Kraft paper"
	case bag.PaperBoard:
		return "Board"
	}
	return "Uncoated paper"
}

func colourWord(colour bag.PaperColour) phrase.Word {
	if colour == bag.ColourNatural {
		return "natural brown"
	}
	return "white"
}

func handleWord(handle bag.Handle) phrase.Word {
	switch handle.Kind {
	case bag.HandleRope:
		if handle.Eyelets {
			return "Rope through eyelets"
		}
		return "Rope, knotted inside"
	case bag.HandleRibbon:
		if handle.Eyelets {
			return "Ribbon through eyelets"
		}
		return "Ribbon, knotted inside"
	case bag.HandleTape:
		return "Flat tape through slits, fastened inside"
	case bag.HandleHandHole:
		return "Hand hole in the paper"
	case bag.HandleTwisted:
		return "Twisted paper cord, glued inside"
	case bag.HandleStrip:
		return "Flat paper strip, glued inside"
	}
	return "No handle"
}

func finishWord(film bag.Lamination) phrase.Word {
	switch film {
	case bag.LaminationGloss:
		return "Gloss film outside"
	case bag.LaminationMatt:
		return "Matt film outside"
	}
	return "Plain, without film"
}

func topWord(top bag.Top, card bool) phrase.Word {
	switch {
	case top == bag.TopZigzag:
		return "Cut in a zigzag"
	case top == bag.TopStraight:
		return "Cut straight"
	case card:
		return "Turned in, with a card inside"
	}
	return "Turned in"
}

func baseWord(body bag.Body, card bool) phrase.Word {
	switch {
	case body.Base == bag.BasePinch:
		return "Folded over and glued"
	case card:
		return "Flat, with a card inside"
	}
	return "Flat, stands by itself"
}

// cautions returns what no proof can promise.
func (p *Proof) cautions() []string {
	return []string{
		p.say("Colours on a screen or from an office printer are not binding; a colour proof or a printed sample is."),
		p.say("How much the bag carries can only be estimated beforehand; a test with a sample must confirm it."),
	}
}

// inOneLine joins the lines of a value.
func inOneLine(value string) string { return strings.ReplaceAll(value, "\n", ", ") }

// approved returns what a signature is for, line by line below the name of the bag.
func (p *Proof) approved(open int) []string {
	still := p.say("Still open: nothing")
	if open > 0 {
		still = p.tell(phrase.New("Still open, as listed in this proof: %d", open))
	}
	return append(p.sizes(),
		inOneLine(p.paper()),
		p.say(handleWord(p.Snapshot.Spec.Handle)),
		p.tell(phrase.New("Version %s of %s", p.Version, p.day())),
		still)
}

// onlyThis says how far a signature reaches.
func (p *Proof) onlyThis() string {
	return p.say("This approval is for exactly this bag. Every change to it makes another version, to be approved anew.")
}
