package export_test

import (
	"context"
	"encoding/json"
	"encoding/xml"
	"io"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// inGerman returns what says the texts of the program in German, and complains about what
// it has no word for or what the lettering has no glyph for.
func inGerman(t *testing.T) func(string) string {
	t.Helper()
	data, err := assets.Translations.ReadFile("translations/de.json")
	if err != nil {
		t.Fatal(err)
	}
	var texts map[string]string
	if err := json.Unmarshal(data, &texts); err != nil {
		t.Fatal(err)
	}
	return func(english string) string {
		german, known := texts[english]
		if !known {
			t.Errorf("there is no German for %q", english)
			return english
		}
		for _, face := range []*typeface.Face{typeface.Regular(), typeface.Bold()} {
			for _, letter := range german {
				if _, shown := face.Glyph(letter); shown != letter {
					t.Errorf("the lettering has no %q, which %q needs", letter, german)
				}
			}
		}
		return german
	}
}

// germanBags are bags whose drawings have every text between them.
func germanBags(t *testing.T) map[string]*document.Snapshot {
	t.Helper()
	bags := map[string]*document.Snapshot{"demo": demo(t)}
	for name, change := range map[string]func(*bag.Spec){
		"usual":   func(*bag.Spec) {},
		"ribbon":  func(s *bag.Spec) { s.Handle.Kind, s.Handle.Eyelets, s.Body.Top = bag.HandleRibbon, true, bag.TopZigzag },
		"tape":    func(s *bag.Spec) { s.Handle.Kind, s.Body.Base = bag.HandleTape, bag.BaseSlotted },
		"pinch":   func(s *bag.Spec) { s.Handle.Kind, s.Body.Base = bag.HandleHandHole, bag.BasePinch },
		"twisted": func(s *bag.Spec) { s.Handle.Kind, s.Body.Seams = bag.HandleTwisted, bag.SeamsTwo },
		"strip":   func(s *bag.Spec) { s.Handle.Kind, s.Paper.Grain = bag.HandleStrip, bag.GrainWidth },
		"none":    func(s *bag.Spec) { s.Handle.Kind, s.Body.Top = bag.HandleNone, bag.TopStraight },
	} {
		spec := bag.Default()
		change(&spec)
		spec.Derive(func(string) bool { return false })
		snapshot, err := document.Derive(spec)
		if err != nil {
			t.Fatal(err)
		}
		bags[name] = snapshot
	}
	bags["family"] = familyOf(t, func(*bag.Spec) {})
	return bags
}

// englishWords are words of the drawings that are no German ones too.
var englishWords = regexp.MustCompile(`(?i)\b(front|back|seam|flap|gusset|base|turn-in|grain|top|card|reverse|carried|carrier|have|die-maker|` +
	`lines|bag|bags|blank|paper|made|date|scale|millimetres|measure|print|sheet|sheets|gripper|colour|lay|edge|drop|width|` +
	`height|crease|fold|glue|glued|patch|holes?|eyelets|cut|bleed|gap|area|artwork|safe|the|of|to|from|with|and|side)\b`)

// withoutNames takes out of a text what is no word of ours: names of layers and of bags.
func withoutNames(text string, snapshot *document.Snapshot) string {
	text = strings.ReplaceAll(text, snapshot.Spec.Name, "")
	for _, role := range scene.AllRoles() {
		text = regexp.MustCompile(`\b`+role.String()+":").ReplaceAllString(text, "")
	}
	return text
}

// Sources: poppler's pdftotext, Go's reader of XML, and ezdxf. The files for the trade that
// are written in German have no English word and no decimal point left, and what they show
// of umlauts and ß comes back.
func TestFilesForTheTradeInGerman(t *testing.T) {
	say := inGerman(t)
	for name, snapshot := range germanBags(t) {
		list := "dieline,press"
		switch name {
		case "demo", "usual":
			list = "dieline,template,svg,dxf,press,press-svg,press-dxf"
		case "family":
			list = "gang,gang-dxf"
		}
		kinds, err := export.Choose(list)
		if err != nil {
			t.Fatal(err)
		}
		job := export.Job{Folder: t.TempDir(), Project: name, Snapshot: snapshot, Date: day, Kinds: kinds, Say: say}
		paths, err := export.Write(context.Background(), job, func(float64, string) {})
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range paths {
			text := withoutNames(textOf(t, path), snapshot)
			for _, line := range strings.Split(text, "\n") {
				if word := englishWords.FindString(line); word != "" {
					t.Errorf("%s says %q in %q", filepath.Base(path), word, line)
				}
				if regexp.MustCompile(`\d\.\d`).MatchString(line) {
					t.Errorf("%s has a decimal point in %q", filepath.Base(path), line)
				}
			}
			want := []string{"Weißmuster", "Rücksprung", "Standhöhe", ",5"}
			switch {
			case strings.Contains(path, "-template"):
				want = []string{"Laufrichtung"}
			case strings.Contains(path, "-press"), strings.Contains(path, "-gang"):
				want = []string{"Druckbogen", "prüfen", "Greiferrand", "Seitenmarke"}
			}
			for _, german := range want {
				if !strings.Contains(text, german) {
					t.Errorf("%s does not say %q:\n%s", filepath.Base(path), german, text)
				}
			}
		}
	}
}

// textOf returns the lettering of a file, with the descriptions of an SVG file.
func textOf(t *testing.T, path string) string {
	t.Helper()
	switch filepath.Ext(path) {
	case ".pdf":
		return string(geomtest.Run(t, geomtest.Tool(t, "pdftotext"), "-enc", "UTF-8", "-layout", path, "-"))
	case ".svg":
		return textOfSVG(t, path)
	}
	return textOfDXF(t, path)
}

func textOfSVG(t *testing.T, path string) string {
	t.Helper()
	var text strings.Builder
	inside := ""
	decoder := xml.NewDecoder(strings.NewReader(string(read(t, path))))
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			return text.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			inside = token.Name.Local
		case xml.CharData:
			if inside == "text" || inside == "desc" {
				text.WriteString(string(token) + "\n")
			}
		}
	}
}

func textOfDXF(t *testing.T, path string) string {
	t.Helper()
	python := geomtest.Tool(t, "/usr/bin/python3")
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		geomtest.Missing(t, "python3-ezdxf")
	}
	var file struct{ Entities []struct{ Text string } }
	script := filepath.Join(geomtest.Root(t), "testdata", "outside", "dxf-read.py")
	if err := json.Unmarshal(geomtest.Run(t, python, script, path), &file); err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	for _, entity := range file.Entities {
		text.WriteString(entity.Text + "\n")
	}
	return text.String()
}
