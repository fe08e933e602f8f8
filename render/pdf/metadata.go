package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"regexp"
	"strings"
	"time"

	"gussetwright/geometry/phrase"
)

// creator is the program that the file names as its maker.
const creator = "Gussetwright"

// Info is what the file says about itself.
type Info struct {
	Title    string
	Date     time.Time     // the day of making; the time of day is left out
	Language string        // in which it is written, as in "de" or "en-GB"; may be empty
	Output   *OutputIntent // how drawings will be printed; nil where nobody knows
	// Template makes a drawing one to draw on: it has an artwork layer even while that
	// is empty, and all its other layers are locked (ISO 32000-1, table 101).
	Template bool
}

// dictionary returns the document information (ISO 32000-1, 14.3.3).
func (i Info) dictionary() dict {
	// The offset is spelled out: some readers take no Z.
	date := text("D:" + i.Date.Format("20060102") + "000000+00'00'")
	return dict{
		{"Title", text(i.Title)},
		{"Creator", text(creator)},
		{"Producer", text(creator)},
		{"CreationDate", date},
		{"ModDate", date},
		{"Trapped", name("False")},
	}
}

// packet says the same in XMP (ISO 16684-1), where newer programs look; more is what
// else it says, as a description of its own, or nothing.
func (i Info) packet(more string) plain {
	const form = `<?xpacket begin="%[1]s" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">%[2]s</rdf:li></rdf:Alt></dc:title>
<xmp:CreatorTool>%[3]s</xmp:CreatorTool>
<xmp:CreateDate>%[4]s</xmp:CreateDate>
<xmp:ModifyDate>%[4]s</xmp:ModifyDate>
<xmp:MetadataDate>%[4]s</xmp:MetadataDate>
<pdf:Producer>%[3]s</pdf:Producer>
<pdf:Trapped>False</pdf:Trapped>
</rdf:Description>
%[5]s</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`
	var title bytes.Buffer
	xml.EscapeText(&title, []byte(strings.ToValidUTF8(i.Title, "\uFFFD"))) // a buffer takes everything
	date := i.Date.Format("2006-01-02") + "T00:00:00+00:00"
	return plain{
		dict{{"Type", name("Metadata")}, {"Subtype", name("XML")}},
		fmt.Appendf(nil, form, "\uFEFF", title.Bytes(), creator, date, more),
	}
}

// languageTag is the spelling of a language with its region (RFC 5646, in short).
var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)

// check refuses dates that the file cannot spell, and languages that are none.
func (i Info) check() error {
	if i.Date.IsZero() {
		return fmt.Errorf("the date is missing; give the day on which the drawing was made")
	}
	if year := i.Date.Year(); year < 1 || year > 9999 {
		return phrase.Errorf("the date is in the year %d, a file can say 1 to 9999; set the clock of this computer", year)
	}
	if i.Language != "" && !languageTag.MatchString(i.Language) {
		return fmt.Errorf("the language is %q; spell it as in de or en-GB, or leave it out", i.Language)
	}
	return nil
}
