package page

import (
	"strings"

	"gussetwright/geometry/phrase"
)

// notes tells what a designer should know about a page before it is printed.
func notes(p *Page, e extract, d *drawn, f *facts, whole bool) []phrase.Phrase {
	var list []phrase.Phrase
	note := func(is bool, said phrase.Phrase) {
		if is {
			list = append(list, said)
		}
	}
	missing := unembedded(p.Fonts)
	note(len(missing) > 0, phrase.New("Fonts are missing in the file and will be replaced: %s. Embed them, or turn the text into outlines.", strings.Join(missing, ", ")))
	note(f.transparency, phrase.New("Transparency is used; have it checked in the proof of the printer."))
	note(f.overprint, phrase.New("Some colours are set to overprint, which the picture on the screen does not show."))
	note(d.layered, phrase.New("The layers of the page are merged as the file shows them when it is opened."))
	note(d.hidden, phrase.New("Parts on hidden layers are left out."))
	note(d.annotations > 0, phrase.New("Comments, links and form fields on the page are left out: %d.", d.annotations))
	note(e.protected, phrase.New("The file is protected by its author; ask whether it may be printed."))
	note(p.Box == TrimBox && p.Media != p.Trim, phrase.New("The page has a trim box and no bleed box, so what stands outside of the trim is left out; save it with bleed."))
	note(!whole, phrase.New("The page has very many parts; lines, texts and pictures were measured for the first %d only.", mostLooked))
	return list
}

func unembedded(fonts []Font) []string {
	var names []string
	for _, font := range fonts {
		if !font.Embedded && len(names) < mostListed {
			names = append(names, font.Name)
		}
	}
	return names
}
