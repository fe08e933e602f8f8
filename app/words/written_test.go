package words

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"io"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/flipbook"
	"gussetwright/app/handout"
	"gussetwright/app/practice"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/creasefile"
	"gussetwright/render/dieline"
	"gussetwright/render/dxf"
	"gussetwright/render/flat"
	"gussetwright/render/pdf"
	"gussetwright/render/pdf/object"
	"gussetwright/render/pdf/profile"
	"gussetwright/render/scene"
	"gussetwright/render/solid"
	"gussetwright/render/svg"
)

// iccOf returns the head of an ICC profile with one part, which begins at such a byte
// and says in its ninth of how many inks it speaks.
func iccOf(class, space string, version byte, part string, start uint32, inks byte) []byte {
	const head, table = 128, 4 + 12
	data := make([]byte, head+table+12)
	binary.BigEndian.PutUint32(data, uint32(len(data)))
	data[8] = version
	copy(data[12:], class+space)
	copy(data[36:], "acsp")
	data[head+3] = 1
	copy(data[head+4:], part)
	binary.BigEndian.PutUint32(data[head+8:], start)
	binary.BigEndian.PutUint32(data[head+12:], 12)
	data[head+table+8] = inks
	return data
}

const firstPart = 128 + 4 + 12

// goodICC can be a printing condition as far as its head tells.
func goodICC() []byte { return iccOf("prtr", "CMYK", 4, "A2B0", firstPart, 4) }

// refusedProfiles are profiles that are no printing condition.
func refusedProfiles() map[string][]byte {
	cut := goodICC()
	binary.BigEndian.PutUint32(cut, 9999)
	crowded := goodICC()
	crowded[128] = 1
	list := map[string][]byte{
		"profile of nothing": nil, "profile that is cut off": cut, "profile of many parts": crowded,
		"profile of version 5":       iccOf("prtr", "CMYK", 5, "A2B0", firstPart, 4),
		"profile outside of itself":  iccOf("prtr", "CMYK", 4, "A2B0", 9999, 4),
		"profile for RGB":            iccOf("prtr", "RGB ", 4, "A2B0", firstPart, 3),
		"profile without its table":  iccOf("prtr", "CMYK", 4, "A2B1", firstPart, 4),
		"profile of a class unheard": iccOf("zzzz", "CMYK", 4, "A2B0", firstPart, 4),
	}
	for _, class := range []string{"mntr", "scnr", "spac", "link", "abst", "nmcl"} {
		list["profile of class "+class] = iccOf(class, "CMYK", 4, "A2B0", firstPart, 4)
	}
	return list
}

// notForPress are resources of artwork that PDF/X-4 does not allow.
func notForPress() map[string]object.Dict {
	in := func(kind object.Name, value object.Object) object.Dict {
		return object.Dict{{Key: kind, Value: object.Dict{{Key: "X", Value: value}}}}
	}
	named := func(pairs ...object.Name) object.Dict {
		var d object.Dict
		for i := 0; i < len(pairs); i += 2 {
			d = append(d, object.Entry{Key: pairs[i], Value: pairs[i+1]})
		}
		return d
	}
	return map[string]object.Dict{
		"a font that is missing": in("Font", named("Type", "Font", "Subtype", "Type1", "BaseFont", "Caslon")),
		"a part packed by LZW":   in("XObject", object.Stream{Dict: named("Filter", "LZWDecode")}),
		"PostScript":             in("XObject", object.Stream{Dict: named("Subtype", "PS")}),
		"OPI":                    in("XObject", object.Plain{Dict: object.Dict{{Key: "OPI", Value: object.Dict{}}}}),
		"other tones":            in("ExtGState", named("Type", "ExtGState", "TR", "Identity")),
	}
}

// fullDisk takes nothing.
type fullDisk struct{}

var errFull = errors.New("no space left on device")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

// sheetOf returns a drawing with one line on a page of such a width.
func sheetOf(width float64, items ...scene.Item) scene.Drawing {
	media := geometry.RectAt(0, 0, width, 100)
	cut := scene.Stroke{Role: scene.Cutting, Path: geometry.RectAt(10, 10, 50, 50).Path(), Width: 0.35}
	return scene.Drawing{Title: "Sheet", Media: media, Bleed: media, Trim: media, Items: append(items, cut)}
}

// refusedFiles are errors about files that are written, by what is wrong, and about
// lengths that are typed.
func refusedFiles(t *testing.T, add func(name string, err error, foreign ...string)) {
	t.Helper()
	day := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
	for name, data := range refusedProfiles() {
		_, err := profile.Press(data)
		add(name, err)
	}
	plain := pdf.Info{Title: "Tea", Date: day}
	printed := pdf.Info{Title: "Tea", Date: day, Output: &pdf.OutputIntent{Profile: goodICC(), Condition: "Offset"}}
	writePDF := func(name string, page scene.Drawing, info pdf.Info) {
		add(name, pdf.Write(io.Discard, []scene.Drawing{page}, info))
	}
	for name, resources := range notForPress() {
		placed := scene.Placed{
			Form: &object.Form{Width: 1, Height: 1, Resources: resources},
			At:   geometry.Affine{U: geometry.Vec2{X: 50}, V: geometry.Vec2{Y: 50}}, Opacity: 1,
		}
		writePDF(name, sheetOf(100, placed), printed)
	}
	nameless, untitled, late := printed, printed, plain
	nameless.Output = &pdf.OutputIntent{Profile: goodICC()}
	untitled.Title, late.Date = "", day.AddDate(9000, 0, 0)
	writePDF("a condition without a name", sheetOf(100), nameless)
	writePDF("a file for print without a title", sheetOf(100), untitled)
	writePDF("a date of the far future", sheetOf(100), late)
	writePDF("a page of 6 m", sheetOf(6000), plain)
	writePDF("a page of no width", sheetOf(0), plain)
	writePDF("a hair line", sheetOf(100, scene.Stroke{Role: scene.Creasing, Path: geometry.RectAt(1, 1, 9, 9).Path()}), plain)
	writePDF("a line of 20 m", sheetOf(100, scene.Stroke{Role: scene.Creasing, Width: 1, Path: geometry.RectAt(1, 1, 20_000, 9).Path()}), plain)
	stuckOut := sheetOf(100)
	stuckOut.Trim = geometry.RectAt(50, 50, 90, 10)
	writePDF("a bag beside its page", stuckOut, plain)

	snapshot := document.New().State().Snapshot
	drawings := dieline.Sheets(&snapshot.Blank, "")
	full := errFull.Error()
	add("PDF on a full disk", pdf.Write(fullDisk{}, drawings, plain), full)
	add("SVG on a full disk", svg.Write(fullDisk{}, drawings), full)
	add("DXF on a full disk", dxf.Write(fullDisk{}, drawings), full)
	add("FOLD on a full disk", creasefile.Write(fullDisk{}, "tea", blank.Patterns(snapshot.Spec)), full)
	add("PNG on a full disk", flat.WritePNG(fullDisk{}, drawings[0], 1), full)
	add("PNG without pixels", flat.WritePNG(io.Discard, drawings[0], 1e-9))
	add("a picture without pixels", solid.WritePNG(io.Discard, solid.View{}))
	refusedLessons(snapshot, add)
	for _, text := range []string{"", "5 ell", "5 6 7", "1 2", "1,234", "x1", "1/0", "1e999"} {
		_, err := geometry.ParseLength(text, geometry.Millimetre)
		add("the length "+text, err)
	}
}

// refusedLessons are errors about files for those who fold.
func refusedLessons(snapshot *document.Snapshot, add func(name string, err error, foreign ...string)) {
	ended, end := context.WithCancel(context.Background())
	end()
	stopped := context.Canceled.Error()
	var out bytes.Buffer
	add("an animation that was ended", flipbook.GIF(ended, &out, flipbook.Order{Snapshot: snapshot}), stopped)
	add("a strip that was ended", flipbook.Strip(ended, &out, flipbook.Order{Snapshot: snapshot}), stopped)
	add("a lesson that was ended", handout.Write(ended, &out, handout.Order{Snapshot: snapshot}), stopped)
	add("practice that was ended", practice.Write(ended, &out, practice.Order{Snapshot: snapshot}), stopped)
	add("practice with wide margins", practice.Write(ended, &out, practice.Order{Snapshot: snapshot, Margin: 200}), "mm", "mm", "mm")
}
