package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"time"
)

// creator is the program that the file names as its maker.
const creator = "Gussetwright"

// Info is what the file says about itself.
type Info struct {
	Title string
	Date  time.Time // the day of making; the time of day is left out
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

// packet says the same in XMP (ISO 16684-1), where newer programs look.
func (i Info) packet() plain {
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
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`
	var title bytes.Buffer
	xml.EscapeText(&title, []byte(strings.ToValidUTF8(i.Title, "\uFFFD"))) // a buffer takes everything
	date := i.Date.Format("2006-01-02") + "T00:00:00+00:00"
	return plain{
		dict{{"Type", name("Metadata")}, {"Subtype", name("XML")}},
		fmt.Appendf(nil, form, "\uFEFF", title.Bytes(), creator, date),
	}
}

// check refuses dates that the file cannot spell.
func (i Info) check() error {
	if i.Date.IsZero() {
		return fmt.Errorf("the date is missing; give the day on which the drawing was made")
	}
	if year := i.Date.Year(); year < 1 || year > 9999 {
		return fmt.Errorf("the date is in the year %d, a file can say 1 to 9999; set the clock of this computer", year)
	}
	return nil
}
