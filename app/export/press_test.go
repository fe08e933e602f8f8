package export_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/image/tiff"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// onSheet returns the illustrated bag on a sheet of another size, on which its blanks
// may lie across each other.
func onSheet(t *testing.T, width, height float64) *document.Snapshot {
	t.Helper()
	snapshot, files := illustrated(t)
	spec := snapshot.Spec
	spec.Sheet.Width, spec.Sheet.Height = width, height
	spec.Sheet.GrainRule = bag.GrainFree
	spec.Profile = "press.icc"
	const program = `currentuserparams /ICCProfilesDir get (default_cmyk.icc) concatstrings (r) file
{dup 65536 string readstring exch (%stdout) (w) file exch writestring not {exit} if} loop quit`
	files[spec.Profile] = geomtest.Run(t, "gs", "-q", "-dNODISPLAY", "-dNOSAFER", "-dBATCH", "-c", program)
	snapshot, err := document.DeriveWithArt(context.Background(), spec, files)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

// exported writes kinds of file and returns their paths.
func exported(t *testing.T, snapshot *document.Snapshot, kinds string) []string {
	t.Helper()
	chosen, err := export.Choose(kinds)
	if err != nil {
		t.Fatal(err)
	}
	paths, err := export.Write(context.Background(), export.Job{Folder: t.TempDir(), Project: "bag", Snapshot: snapshot, Date: day, Kinds: chosen}, func(float64, string) {})
	if err != nil {
		t.Fatal(err)
	}
	return paths
}

// On a sheet with blanks that lie and stand, the colours of a JPEG, a PDF page and an
// SVG drawing are seen on every blank where the plan and the blank say, to a pixel of
// half a millimetre, in the pictures that poppler and MuPDF make.
func TestColoursStandOnThePressSheet(t *testing.T) {
	snapshot := onSheet(t, 1200, 1000)
	turns := map[int]bool{}
	for _, at := range snapshot.Plan.Placements {
		turns[at.Turn] = true
	}
	if snapshot.Plan.Up() != 3 || len(turns) != 2 {
		t.Fatalf("%d blanks in the turns %v; the test needs three in two", snapshot.Plan.Up(), turns)
	}
	path := exported(t, snapshot, "press")[0]
	folder := t.TempDir()
	geomtest.Run(t, "qpdf", "--check", path)
	geomtest.Run(t, "pdftoppm", "-r", "50.8", "-png", "-singlefile", path, filepath.Join(folder, "poppler"))
	geomtest.Run(t, "mutool", "draw", "-q", "-r", "50.8", "-o", filepath.Join(folder, "mupdf.png"), path, "1")
	trim, mediaTop := boxes(t, path, 1)
	for _, reader := range []string{"poppler", "mupdf"} {
		file, err := os.Open(filepath.Join(folder, reader+".png"))
		if err != nil {
			t.Fatal(err)
		}
		picture, _, err := image.Decode(file)
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		for i := range snapshot.Plan.Placements {
			motion := snapshot.Plan.Motion(i)
			wrong, looked := 0, 0
			for y := 72.0; y < 428; y += 1.5 {
				for x := 1.0; x < 579; x += 1.5 {
					p := geometry.Vec2{X: x, Y: y}
					want, known := expected(p, 0.6)
					if !known || nearLine(snapshot, p) || nearHole(snapshot, p) {
						continue
					}
					on := motion.At(p)
					px, py := int((trim.X*25.4/72+on.X)*2), int(((mediaTop-trim.Y)*25.4/72-on.Y)*2)
					looked++
					if nearest(picture.At(px, py)) != want {
						wrong++
					}
				}
			}
			if looked < 50_000 || float64(wrong) > 0.005*float64(looked) { // its number stands on it
				t.Errorf("%s, blank %d: %d of %d probes have another colour", reader, i+1, wrong, looked)
			}
		}
	}
}

// However many blanks there are, each file of artwork stands in the press sheet once,
// the JPEG byte for byte (pdfimages of poppler), and eight blanks take hardly more room
// than one. With a profile the file declares PDF/X-4, and without its own clock it comes
// out the same twice.
func TestArtworkStandsInThePressSheetOnce(t *testing.T) {
	sizes := map[int]int{}
	for _, size := range [][2]float64{{720, 520}, {2000, 1450}} {
		snapshot := onSheet(t, size[0], size[1])
		path := exported(t, snapshot, "press")[0]
		data := read(t, path)
		sizes[snapshot.Plan.Up()] = len(data)
		list := strings.Split(strings.TrimSpace(string(geomtest.Run(t, "pdfimages", "-list", path))), "\n")[2:]
		numbers := map[string]bool{}
		for _, line := range list {
			numbers[strings.Fields(line)[10]] = true
		}
		if len(numbers) != 1 {
			t.Errorf("%d-up: images are %q, want one object", snapshot.Plan.Up(), list)
		}
		if jpeg := photo(t); bytes.Count(data, jpeg) != 1 {
			t.Errorf("%d-up: the JPEG stands %d times in the file", snapshot.Plan.Up(), bytes.Count(data, jpeg))
		}
		if !bytes.Contains(data, []byte("GTS_PDFXVersion>PDF/X-4<")) || !bytes.Contains(data, []byte("/GTS_PDFX")) {
			t.Error("the file does not declare PDF/X-4")
		}
		if again := read(t, exported(t, snapshot, "press")[0]); !bytes.Equal(again, data) {
			t.Error("written twice, the file differs")
		}
	}
	if one, eight := sizes[1], sizes[8]; one == 0 || eight == 0 || eight > one+one/50 {
		t.Errorf("bytes by blanks: %v", sizes)
	}
}

// Source: Ghostscript's tiffsep. On the press sheet the die is on plates of its own and
// leaves the inks whole: beneath the top fold of every blank the cyan of the background
// is as beside it. Where nothing but lines of the die and the sheet stand, no process
// plate prints.
func TestDieIsOnPlatesOfItsOwn(t *testing.T) {
	snapshot := onSheet(t, 1200, 1000)
	path := exported(t, snapshot, "press")[0]
	folder := t.TempDir()
	geomtest.Run(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-sDEVICE=tiffsep", "-r100", "-sCompression=none", "-sOutputFile="+filepath.Join(folder, "page%d.tif"), path)
	plate := func(ink string) *image.Gray {
		file, err := os.Open(filepath.Join(folder, "page1("+ink+").tif"))
		if err != nil {
			t.Fatal(err)
		}
		defer file.Close()
		picture, err := tiff.Decode(file)
		if err != nil {
			t.Fatal(err)
		}
		return picture.(*image.Gray)
	}
	trim, mediaTop := boxes(t, path, 1)
	const scale = 100.0 / 72
	at := func(g *image.Gray, p geometry.Vec2) uint8 {
		return g.GrayAt(int((trim.X+p.X*72/25.4)*scale), int((mediaTop-trim.Y-p.Y*72/25.4)*scale)).Y
	}
	cyan, magenta, creasing, gripper := plate("Cyan"), plate("Magenta"), plate("Creasing"), plate("Gripper")
	for i := range snapshot.Plan.Placements {
		motion := snapshot.Plan.Motion(i)
		creased := false
		for x := 590.0; x < 670; x += 0.25 { // the top fold on the left gusset, as in the production file
			for y := 429.6; y < 430.5; y += 0.15 {
				p := geometry.Vec2{X: x, Y: y}
				creased = creased || at(creasing, motion.At(p)) < 200
				if got, around := at(cyan, motion.At(p)), at(cyan, motion.At(geometry.Vec2{X: x, Y: 436})); got > around+2 || got+2 < around {
					t.Fatalf("blank %d: cyan at %v is %d, around it %d", i+1, p, got, around)
				}
				if got := at(magenta, motion.At(p)); got != 255 {
					t.Fatalf("blank %d: magenta prints %d beneath a crease", i+1, got)
				}
			}
		}
		if !creased {
			t.Errorf("blank %d: no crease on its plate where the top fold runs", i+1)
		}
	}
	hatched := false
	for x := 2.0; x < 1198; x += 0.5 {
		p := geometry.Vec2{X: x, Y: 3}
		hatched = hatched || at(gripper, p) < 200
		if at(cyan, p) != 255 || at(magenta, p) != 255 {
			t.Fatalf("ink in the gripper at %v", p)
		}
	}
	if !hatched {
		t.Error("the gripper is not hatched")
	}
}

// measured is what an independent reader found on a layer of a DXF file.
type measured struct {
	lines, circles int
	length         float64 // of lines, mm
}

// layersOfDXF measures each layer with ezdxf, whose audit must find nothing.
func layersOfDXF(t *testing.T, path string) map[string]measured {
	t.Helper()
	python := geomtest.Tool(t, "/usr/bin/python3")
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		geomtest.Missing(t, "python3-ezdxf")
	}
	var file struct {
		Faults   []string
		Units    int
		Entities []struct {
			Type, Layer string
			Points      [][2]float64
		}
	}
	script := filepath.Join(geomtest.Root(t), "testdata", "outside", "dxf-read.py")
	if err := json.Unmarshal(geomtest.Run(t, python, script, path), &file); err != nil {
		t.Fatal(err)
	}
	if len(file.Faults) > 0 || file.Units != 4 {
		t.Errorf("%s: unit %d, faults %q", path, file.Units, file.Faults)
	}
	layers := map[string]measured{}
	for _, e := range file.Entities {
		m := layers[e.Layer]
		switch e.Type {
		case "LINE":
			m.lines++
			m.length += math.Hypot(e.Points[1][0]-e.Points[0][0], e.Points[1][1]-e.Points[0][1])
		case "CIRCLE":
			m.circles++
		}
		layers[e.Layer] = m
	}
	return layers
}

// Source: ezdxf. On the press sheet each layer of the die holds the lines of one blank
// as often as there are blanks: their number, their length and the holes. Sheet and
// gripper are on layers of their own.
func TestImposedDieIsThatOfOneBlankSeveralTimes(t *testing.T) {
	for _, size := range [][2]float64{{720, 520}, {1200, 1000}, {2000, 1450}} {
		snapshot := onSheet(t, size[0], size[1])
		paths := exported(t, snapshot, "dxf,press-dxf")
		one, sheet := layersOfDXF(t, paths[0]), layersOfDXF(t, paths[1])
		up := snapshot.Plan.Up()
		for _, layer := range []string{"CUTTING", "CREASING", "REVERSE_CREASING", "PUNCHING"} {
			single, all := one[layer], sheet[layer]
			if all.lines != up*single.lines || all.circles != up*single.circles || single.lines+single.circles == 0 {
				t.Errorf("%d-up, %s: %+v, of one blank %+v", up, layer, all, single)
			}
			if want := float64(up) * single.length; math.Abs(all.length-want) > 1e-3*float64(up) {
				t.Errorf("%d-up, %s: %g mm, want %g", up, layer, all.length, want)
			}
		}
		if edge := sheet["SHEET_EDGE"]; edge.lines != 4 || math.Abs(edge.length-2*(size[0]+size[1])) > 1e-6 {
			t.Errorf("the edge of the sheet is %+v", edge)
		}
		if sheet["GRIPPER"].lines < 10 || sheet["PRESS_MARKS"].lines == 0 {
			t.Errorf("layers %+v", sheet)
		}
		if _, has := one["GRIPPER"]; has {
			t.Error("the drawing of a piece has a gripper")
		}
	}
}

// The lines of every blank come back out of the imposed SVG where the plan says.
func TestImposedSVGHoldsTheLinesOfEveryBlank(t *testing.T) {
	snapshot := onSheet(t, 1200, 1000)
	path := exported(t, snapshot, "press-svg")[0]
	// The sheet is the only closed rectangle of its size; its corner gives the place.
	lines := linesOfAnySVG(t, path, 1200, 1000)
	for i := range snapshot.Plan.Placements {
		motion := snapshot.Plan.Motion(i)
		for _, line := range snapshot.Blank.Pieces[0].Lines {
			edge := geometry.Edge{From: motion.At(line.From), To: motion.At(line.To)}
			if line.Bulge == 0 && !among(edge, lines) {
				t.Fatalf("blank %d: %s %s from %v to %v is not in the file", i+1, line.Kind, line.Role, edge.From, edge.To)
			}
		}
	}
}

// linesOfAnySVG returns the lines in mm from the lower left corner of a sheet of the
// given size, which the file holds as a path.
func linesOfAnySVG(t *testing.T, path string, width, height float64) []ends {
	t.Helper()
	var view [2]float64
	if _, err := fmt.Sscanf(after(string(read(t, path)), `viewBox="0 0 `), "%g %g", &view[0], &view[1]); err != nil {
		t.Fatal(err)
	}
	lines := linesOfSVG(t, path, geometry.RectAt(0, 0, view[0], view[1]))
	for i, l := range lines {
		if i+1 < len(lines) && math.Abs(l.b.X-l.a.X-width) < slack && math.Abs(lines[i+1].b.Y-l.b.Y-height) < slack && l.b == lines[i+1].a {
			return moved(lines, l.a)
		}
	}
	t.Fatal("there is no edge of the sheet")
	return nil
}

func after(text, mark string) string {
	_, rest, _ := strings.Cut(text, mark)
	return rest
}

// A bag that fits on no sheet has no press sheet: all kinds together are written without
// it, and it alone is an error that says what to do.
func TestBagThatFitsOnNoSheet(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Seams = bag.SeamsOne
	spec.Sheet.Width, spec.Sheet.Height = 300, 200
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(t.TempDir(), "out")
	write := func(kinds []export.Kind) ([]string, error) {
		return export.Write(context.Background(), export.Job{Folder: folder, Project: "bag", Snapshot: snapshot, Date: day, Kinds: kinds}, func(float64, string) {})
	}
	for _, list := range []string{"press", "press-svg", "dxf,press-dxf"} {
		kinds, err := export.Choose(list)
		if err != nil {
			t.Fatal(err)
		}
		_, err = write(kinds)
		if err == nil || !strings.Contains(err.Error(), "700 mm × 480 mm, does not fit in the 300 mm × 180 mm") || !strings.Contains(err.Error(), "take a larger sheet, a bag with two seams or a smaller bag") {
			t.Errorf("%s: error %v", list, err)
		}
	}
	if _, err := os.Stat(folder); err == nil {
		t.Error("something was written")
	}
	var press, light []export.Kind
	for _, kind := range export.Kinds() {
		if kind.OfSheets {
			press = append(press, kind)
			if kind.Lacking(snapshot) == nil || kind.Files("bag", snapshot) != nil {
				t.Errorf("%s: the bag does not lack it", kind.Name)
			}
		}
		if kind.OfSheets || slices.Contains([]string{"dieline", "svg", "dxf"}, kind.Name) {
			light = append(light, kind)
		}
	}
	paths, err := write(light)
	if err != nil || len(paths) != 3 {
		t.Errorf("all kinds: %q, error %v", paths, err)
	}
	if _, err := write(press); err == nil || !strings.Contains(err.Error(), "nothing was written") {
		t.Errorf("nothing but press sheets: error %v", err)
	}
}

// Two forms are two pages of the one PDF file, and two drawings.
func TestEachPieceOnASheetOfItsOwn(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Seams = bag.SeamsTwo
	spec.Sheet.Width, spec.Sheet.Height = 520, 400 // one piece of 360 × 480 lies on it
	spec.Sheet.GrainRule = bag.GrainFree
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	paths := exported(t, snapshot, "press,press-svg,press-dxf")
	for _, path := range paths {
		names = append(names, filepath.Base(path))
	}
	want := []string{"bag-press.pdf", "bag-1-press.svg", "bag-2-press.svg", "bag-1-press.dxf", "bag-2-press.dxf"}
	if !slices.Equal(names, want) {
		t.Errorf("files %q, want %q", names, want)
	}
	if info := string(geomtest.Run(t, "pdfinfo", paths[0])); !strings.Contains(info, "Pages:           2") {
		t.Errorf("pdfinfo: %s", info)
	}
	if bytes.Equal(read(t, paths[1]), read(t, paths[2])) {
		t.Error("both forms are the same")
	}
}
