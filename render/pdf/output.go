package pdf

import (
	"fmt"
	"hash"
	"strings"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
	"gussetwright/render/pdf/profile"
	"gussetwright/render/scene"
)

// OutputIntent is the printing condition for which a drawing is made. A file with
// one declares PDF/X-4 (ISO 15930-7; its rules here are from memory).
type OutputIntent struct {
	Profile   []byte // ICC profile of the condition: class prtr, for CMYK
	Condition string // identifier, such as a name in a registry; empty for the name in the profile
	Info      string // for people to read; empty for the name in the profile
}

// press is an output intent that was read.
type press struct {
	profile         profile.Profile
	condition, info string
}

// read returns nothing where there is no intent.
func (o *OutputIntent) read() (*press, error) {
	if o == nil {
		return nil, nil
	}
	read, err := profile.Press(o.Profile)
	if err != nil {
		return nil, phrase.Errorf("output profile: %s", err)
	}
	intent := &press{read, o.Condition, o.Info}
	if intent.condition == "" {
		intent.condition = read.Name
	}
	if intent.condition == "" {
		return nil, phrase.Errorf("output profile: it has no name; give the printing condition a name")
	}
	if intent.info == "" {
		intent.info = read.Name
	}
	if intent.info == "" {
		intent.info = intent.condition
	}
	return intent, nil
}

// entry returns the intent as the catalog lists it (ISO 32000-1, 14.11.5).
func (p *press) entry(f *file) dict {
	return dict{
		{"Type", name("OutputIntent")},
		{"S", name("GTS_PDFX")},
		{"OutputConditionIdentifier", text(p.condition)},
		{"Info", text(p.info)},
		{"DestOutputProfile", f.add(stream{dict{{"N", integer(4)}}, p.profile.Data})},
	}
}

// claim returns what the metadata says about PDF/X. The identifier of the document
// follows from its title and what is drawn, so it stays the same as long as those do.
func (p *press) claim(title string, drawn hash.Hash) string {
	drawn.Write([]byte(title)) // a hash takes everything
	id := drawn.Sum(nil)[:16]
	id[6], id[8] = id[6]&0x0F|0x80, id[8]&0x3F|0x80 // a UUID of version 8 (RFC 9562)
	return fmt.Sprintf(`<rdf:Description rdf:about="" xmlns:pdfxid="http://www.npes.org/pdfx/ns/id/" xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/">
<pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>
<xmpMM:DocumentID>uuid:%x-%x-%x-%x-%x</xmpMM:DocumentID>
<xmpMM:VersionID>1</xmpMM:VersionID>
<xmpMM:RenditionClass>default</xmpMM:RenditionClass>
</rdf:Description>
`, id[:4], id[4:6], id[6:8], id[8:10], id[10:])
}

// checkForPress refuses what PDF/X-4 rules out and Write would not have found
// otherwise.
func checkForPress(pages []scene.Drawing, info Info) error {
	if strings.TrimSpace(info.Title) == "" {
		return phrase.Errorf("the title is missing, which PDF/X-4 asks for; name the drawing")
	}
	walk := newWalk(allowed)
	for i, page := range pages {
		err := placedIn(page, func(item int, form *object.Form) error {
			if err := walk.form(form); err != nil {
				return phrase.Errorf("page %d (%s): item %d: PDF/X-4 does not allow this artwork: %s; save it anew as PDF/X-4, or write the file without an output profile", i+1, page.Title, item, err)
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}
