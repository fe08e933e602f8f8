package export

import (
	"fmt"
	"io"
	"strings"

	"gussetwright/app/document"
	"gussetwright/geometry/phrase"
)

// Whom files are for, in English.
const (
	forPress  = "For printer and die-maker"
	forArt    = "For the artwork"
	forClient = "For the client"
	forJob    = "For quote and order"
	forLesson = "For a lesson"
)

// Parties returns whom files are for, each once, those first who cannot do without.
func Parties() []string { return []string{forPress, forClient, forArt, forJob, forLesson} }

// Kind is one kind of file.
type Kind struct {
	Name  string // what the user asks for it by, such as "dieline"
	Title string // what the window calls it, in English
	Help  string
	For   string // whom the file is for, in English: one of Parties
	// Endings follow the name of the project in the names of the files, PieceEnding in
	// those of which there is one for each piece; a number stands before it where there
	// are two. Either may be empty.
	Endings     []string
	PieceEnding string
	// OfSheets tells that the files are of press sheets: there is one with PieceEnding
	// for each form, and none at all for a bag that fits on no sheet.
	OfSheets bool
	// OfFamily tells that the files are of a family: there is none for a bag alone.
	OfFamily bool
	asked    bool // for by name, so that it must not be left out
	// write writes the file of that number, in the order of Files.
	write func(w io.Writer, o *order, number int) error
}

// Kinds returns every kind of file, in the order in which they are written.
func Kinds() []Kind {
	return []Kind{
		{
			Name: "dieline", Title: "Production file", For: forPress, Endings: []string{"-dieline.pdf"}, write: writePDF,
			Help: "the blank at true size with its artwork, a page for each piece, lines as spot colours on layers",
		},
		{
			Name: "template", Title: "Template for artwork", For: forArt, Endings: []string{"-template.pdf"}, PieceEnding: "-template.svg", write: writeTemplate,
			Help: "the blank for a drawing program: an empty layer for artwork under locked lines, panels named, bleed and safe area",
		},
		{
			Name: "svg", Title: "SVG drawing", For: forPress, Endings: []string{".svg"}, write: writeSVG,
			Help: "the drawing in millimetres, a group for each kind of line",
		},
		{
			Name: "dxf", Title: "DXF drawing", For: forPress, Endings: []string{".dxf"}, write: writeDXF,
			Help: "the drawing for cutting tables and die-makers, a layer for each kind of line",
		},
		{
			Name: "press", Title: "Press sheet", For: forPress, Endings: []string{"-press.pdf"}, OfSheets: true, write: writePress,
			Help: "the sheet as it is printed: blanks with artwork and die, gripper, colour bar, register and trim marks",
		},
		{
			Name: "press-svg", Title: "Press sheet as SVG drawing", For: forPress, PieceEnding: "-press.svg", OfSheets: true, write: writePressSVG,
			Help: "cuts and creases of all blanks on the sheet, sheet and gripper as groups of their own",
		},
		{
			Name: "press-dxf", Title: "Press sheet as DXF drawing", For: forPress, PieceEnding: "-press.dxf", OfSheets: true, write: writePressDXF,
			Help: "cuts and creases of all blanks on the sheet for the die-maker, sheet and gripper on layers of their own",
		},
		{
			Name: "gang", Title: "Ganged press sheets", For: forPress, Endings: []string{"-gang.pdf"}, OfFamily: true, write: writeGang,
			Help: "the sizes of a family together on sheets, with artwork and die, a page for each form",
		},
		{
			Name: "gang-dxf", Title: "Ganged press sheets as DXF drawing", For: forPress, Endings: []string{"-gang.dxf"}, OfFamily: true, write: writeGangDXF,
			Help: "cuts and creases of the ganged sheets for the die-maker, one form beside the other",
		},
		{
			Name: "job", Title: "Job sheet", For: forJob, Endings: []string{"-job.pdf"}, write: writeJobSheet,
			Help: "one page for the file of the job: blank, sheet, run, die, gluing, packing and quote with all numbers",
		},
		{
			Name: "job-csv", Title: "Job as a table", For: forJob, Endings: []string{"-job.csv"}, write: writeJobTable,
			Help: "the numbers of the job with their units as comma-separated values, for spreadsheets and order systems",
		},
		{
			Name: "fold", Title: "Crease pattern", For: forLesson, Endings: []string{".fold"}, write: writeFOLD,
			Help: "crease pattern with fold directions, for folding programs",
		},
		{
			Name: "png", Title: "Picture", For: forArt, PieceEnding: "-blank.png", write: writePicture,
			Help: "picture of the drawing, a file for each piece",
		},
		{
			Name: "proof", Title: "Proof to sign", For: forClient, Endings: []string{"-proof.pdf"}, write: writeProof,
			Help: "one to three pages with pictures, words and a place to sign for the client",
		},
		{
			Name: "page", Title: "Proof for a browser", For: forClient, Endings: []string{"-proof.html"}, write: writePage,
			Help: "one file in which the client turns the bag, without a network",
		},
		{
			Name: "pictures", Title: "Pictures of the bag", For: forClient, Endings: pictureEndings(), write: writeBag,
			Help: "the folded bag from six sides, 2000 pixels each",
		},
		{
			Name: "lesson", Title: "Printed lesson", For: forLesson, Endings: []string{"-lesson.pdf"}, write: writeLesson,
			Help: "how the bag is folded: numbered steps with pictures, parts and tools, cautions and checks",
		},
		{
			Name: "practice", Title: "Practice blanks", For: forLesson, Endings: []string{"-practice.pdf"}, write: writePractice,
			Help: "the blank to print on A4, A3, Letter or Tabloid, at full size on tiles with joining marks and reduced to one page",
		},
		{
			Name: "animation", Title: "Moving pictures of the folding", For: forLesson, Endings: []string{"-folding.gif", "-folding.png"}, write: writeAnimation,
			Help: "the folding as a GIF that moves, and as a strip with a picture of each step",
		},
	}
}

// Choose returns the kinds that are named in a list such as "dieline,dxf"; an empty
// list names all. The error names what is not known and what is.
func Choose(list string) ([]Kind, error) {
	if list == "" {
		return Kinds(), nil
	}
	var chosen []Kind
	for _, name := range strings.Split(list, ",") {
		kind, found := kindNamed(strings.TrimSpace(name))
		if !found {
			var names []string
			for _, k := range Kinds() {
				names = append(names, k.Name)
			}
			return nil, phrase.Errorf("file kind %q is not known; choose from %s", name, strings.Join(names, ", "))
		}
		kind.asked = true
		chosen = append(chosen, kind)
	}
	return chosen, nil
}

func kindNamed(name string) (Kind, bool) {
	for _, kind := range Kinds() {
		if kind.Name == name {
			return kind, true
		}
	}
	return Kind{}, false
}

// Lacking returns why a bag has no file of the kind, nil where it has. Write leaves the
// kind out then, unless it was chosen by its name.
func (k Kind) Lacking(snapshot *document.Snapshot) error {
	switch {
	case k.OfSheets:
		return noSheet(snapshot)
	case k.OfFamily:
		return noFamily(snapshot)
	}
	return nil
}

// Files returns the names of the files that the kind takes for a bag, none where it
// lacks them.
func (k Kind) Files(project string, snapshot *document.Snapshot) []string {
	if k.Lacking(snapshot) != nil {
		return nil
	}
	base := FileName(project)
	var names []string
	for _, ending := range k.Endings {
		names = append(names, base+ending)
	}
	count := len(snapshot.Blank.Pieces)
	if k.OfSheets {
		count = len(formsOf(snapshot))
	}
	switch {
	case k.PieceEnding == "":
	case count == 1:
		names = append(names, base+k.PieceEnding)
	default:
		for i := range count {
			names = append(names, fmt.Sprintf("%s-%d%s", base, i+1, k.PieceEnding))
		}
	}
	return names
}
