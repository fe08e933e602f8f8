package batch_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gussetwright/app/batch"
	"gussetwright/assets"
	"gussetwright/geometry/geomtest"
)

var today = time.Date(2026, time.March, 31, 12, 0, 0, 0, time.UTC)

// run runs one command with a text as its standard input.
func run(input string, args ...string) (code int, out, errs string) {
	var stdout, stderr bytes.Buffer
	code = batch.Run(batch.Streams{In: strings.NewReader(input), Out: &stdout, Err: &stderr, Today: today}, args)
	return code, stdout.String(), stderr.String()
}

func demo(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), assets.DemoName)
	if err := os.WriteFile(path, assets.Demo, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestHelpTeaches(t *testing.T) {
	code, out, _ := run("", "--help")
	if code != batch.Fine {
		t.Errorf("exit code %d, want 0", code)
	}
	for _, name := range []string{"new", "describe", "check", "sheets", "gang", "export"} {
		if !strings.Contains(out, "\n  "+name+" ") {
			t.Errorf("the overview does not list %s", name)
		}
		code, help, errs := run("", name, "--help")
		if code != batch.Fine || errs != "" || !strings.Contains(help, "Usage: gwbatch "+name) {
			t.Errorf("%s --help: exit code %d, %q, %q", name, code, help, errs)
		}
	}
}

func TestBadUsage(t *testing.T) {
	path := demo(t)
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "Usage: gwbatch"},
		{[]string{"fold"}, `"fold"`},
		{[]string{"describe"}, "no FILE"},
		{[]string{"describe", path, path}, "2 files"},
		{[]string{"describe", "--loud", path}, "-loud"},
		{[]string{"describe", filepath.Join(t.TempDir(), "none.gusset")}, "none.gusset"},
		{[]string{"export", path}, "--to"},
		{[]string{"export", "--to", t.TempDir(), "--only", "dieline,poster", path}, `"poster" is not known; choose from dieline, template, svg, dxf, press, press-svg, press-dxf, gang, gang-dxf, job, job-csv, fold, png, proof, page, pictures`},
		{[]string{"export", "--to", t.TempDir(), "--date", "31.3.2026", path}, "YYYY-MM-DD"},
		{[]string{"new", "--width", "240"}, "size is missing"},
		{[]string{"new", "--width", "24 kg", "--gusset", "100", "--height", "360"}, "mm, cm, m, in"},
		{[]string{"new", "--width", "nan", "--gusset", "100", "--height", "360"}, "bag.width_mm"},
		{[]string{"new", "--width", "-5", "--gusset", "100", "--height", "360"}, "30 to 1000 mm"},
		{[]string{"new", "--width", "240", "--gusset", "5", "--height", "360"}, "bag.gusset_mm"},
		{[]string{"new", "--width", "240", "--gusset", "100", "--height", "360", "--height-to-flat-fold", "310"}, "give one of them"},
		{[]string{"new", "--width", "240", "--gusset", "100", "--height", "360", "--set", "handle.kind=chain"}, "rope"},
		{[]string{"new", "--width", "240", "--gusset", "100", "--height", "360", "--set", "handle.colour=red"}, `"handle.colour"`},
		{[]string{"new", "--width", "240", "--gusset", "100", "--height", "360", "--set", "cards.top=maybe"}, "yes or no"},
		{[]string{"new", "--width", "240", "--gusset", "100", "--height", "360", "--set", "run.quantity=1.5"}, "whole number"},
		{[]string{"new", "--width", "240", "--gusset", "100", "--height", "360", "out.gusset"}, "-o"},
	} {
		code, out, errs := run("", c.args...)
		if code != batch.Unreadable || out != "" || !strings.Contains(errs, c.says) {
			t.Errorf("%q: exit code %d, printed %q, complained %q; want 2 and %q", c.args, code, out, errs, c.says)
		}
	}
}

func TestUnreadableInputWritesNothing(t *testing.T) {
	for _, input := range []string{
		"", "PK\x03\x04 not a container", `{"bag":{"width_mm":-1}}`, `{"bag":{"width_mm":"24 cm"}}`, `{"bag":{"widht_mm":240}}`, `{"bag":`,
	} {
		folder := filepath.Join(t.TempDir(), "out")
		code, _, errs := run(input, "export", "--to", folder, "-")
		if code != batch.Unreadable || errs == "" {
			t.Errorf("%q: exit code %d, %q", input, code, errs)
		}
		if _, err := os.Stat(folder); err == nil {
			t.Errorf("%q: something was written", input)
		}
	}
}

func TestNewThenDescribe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bag.gusset")
	code, _, errs := run("", "new", "--width", "24cm", "--gusset", "100", "--height-to-flat-fold", "310", "--name", "Test", "--set", "handle.eyelets=yes", "-o", path)
	if code != batch.Fine {
		t.Fatalf("exit code %d: %s", code, errs)
	}
	if code, _, _ := run("", "new", "--width", "240", "--gusset", "100", "--height", "360", "-o", path); code != batch.Unreadable {
		t.Error("an existing file was replaced without being asked")
	}
	_, out, _ := run("", "describe", "--json", path)
	var described struct {
		Name string
		Bag  struct {
			Height float64 `json:"height_mm"`
		}
		Pieces []struct {
			Width float64 `json:"width_mm"`
		}
		Job struct{ Eyelets float64 }
	}
	if err := json.Unmarshal([]byte(out), &described); err != nil {
		t.Fatal(err)
	}
	if described.Name != "Test" || described.Bag.Height != 360 || described.Pieces[0].Width != 699.5 || described.Job.Eyelets != 4000 {
		t.Errorf("described %+v", described)
	}
}

func TestNewToStandardOutputGoesIntoDescribe(t *testing.T) {
	code, document, _ := run("", "new", "--width", "240", "--gusset", "100", "--height", "360")
	if code != batch.Fine || !strings.Contains(document, `"date": "2026-03-31"`) {
		t.Fatalf("exit code %d, %s", code, document)
	}
	code, out, errs := run(document, "describe", "-")
	if code != batch.Fine || !strings.Contains(out, "699.5 × 480 mm") {
		t.Errorf("exit code %d, %s%s", code, out, errs)
	}
}

func TestExitCodeTellsOfAnErrorFinding(t *testing.T) {
	const tooLarge = `{"bag":{"width_mm":900,"gusset_mm":300,"height_mm":1200}}`
	folder := t.TempDir()
	for _, args := range [][]string{{"check", "-"}, {"check", "--json", "-"}, {"describe", "-"}, {"sheets", "-"}, {"export", "--only", "fold", "--to", folder, "-"}} {
		code, out, errs := run(tooLarge, args...)
		if code != batch.BagError {
			t.Errorf("%q: exit code %d, want 1; %s", args, code, errs)
		}
		if args[0] == "check" && !strings.Contains(out, "no-sheet-fits") {
			t.Errorf("%q: %s", args, out)
		}
	}
	if code, _, errs := run("", "check", demo(t)); code != batch.Fine {
		t.Errorf("the demo project: exit code %d, %s", code, errs)
	}
}

func TestExportWritesEveryKindOnceAndAgain(t *testing.T) {
	path := demo(t)
	first, second := t.TempDir(), t.TempDir()
	code, out, errs := run("", "export", "--to", first, path)
	if code != batch.Fine {
		t.Fatalf("exit code %d: %s", code, errs)
	}
	run("", "export", path, "--to", second)
	names := []string{
		"tea-house-dieline.pdf", "tea-house-template.pdf", "tea-house-template.svg", "tea-house.svg", "tea-house.dxf", "tea-house-press.pdf", "tea-house-press.svg", "tea-house-press.dxf", "tea-house-job.pdf", "tea-house-job.csv", "tea-house.fold",
		"tea-house-blank.png", "tea-house-proof.pdf", "tea-house-proof.html", "tea-house-front.png", "tea-house-back.png",
		"tea-house-left.png", "tea-house-right.png", "tea-house-isometric.png", "tea-house-base.png",
		"tea-house-lesson.pdf", "tea-house-practice.pdf", "tea-house-folding.gif", "tea-house-folding.png",
	}
	if got := strings.Count(out, "\n"); got != len(names) {
		t.Errorf("%d files listed, want %d: %s", got, len(names), out)
	}
	for _, name := range names {
		a, err := os.ReadFile(filepath.Join(first, name))
		if err != nil {
			t.Error(err)
			continue
		}
		b, err := os.ReadFile(filepath.Join(second, name))
		if err != nil {
			t.Error(err)
			continue
		}
		if !bytes.Equal(a, b) {
			t.Errorf("%s differs between two exports of one project", name)
		}
	}
}

// The files for trainers are what their names say, and nothing else is written.
func TestExportForTrainers(t *testing.T) {
	folder := t.TempDir()
	code, out, errs := run("", "export", "--only", "lesson,practice,animation", "--to", folder, demo(t))
	if code != batch.Fine {
		t.Fatalf("exit code %d: %s", code, errs)
	}
	begins := map[string]string{
		"tea-house-lesson.pdf": "%PDF-", "tea-house-practice.pdf": "%PDF-", "tea-house-folding.gif": "GIF89a", "tea-house-folding.png": "\x89PNG",
	}
	if got := strings.Count(out, "\n"); got != len(begins) {
		t.Errorf("%d files listed, want %d: %s", got, len(begins), out)
	}
	for name, want := range begins {
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil || !strings.HasPrefix(string(data), want) {
			t.Errorf("%s: %v, begins with %.8q, want %q", name, err, data, want)
		}
	}
}

// Practice blanks are for A4, or for the paper that is asked for, as poppler's pdfinfo
// measures them.
func TestPaperOfPracticeBlanks(t *testing.T) {
	for want, options := range map[string][]string{
		"(A4)": nil, "(A3)": {"--practice-paper", "a3"}, "(letter)": {"--practice-paper", "Letter"},
	} {
		folder := t.TempDir()
		args := append([]string{"export", "--only", "practice", "--to", folder, demo(t)}, options...)
		code, _, errs := run("", args...)
		if code != batch.Fine {
			t.Fatalf("exit code %d: %s", code, errs)
		}
		told := string(geomtest.Run(t, "pdfinfo", "-l", "-1", filepath.Join(folder, "tea-house-practice.pdf")))
		if pages := strings.Count(told, " size: ") - strings.Count(told, "File size:"); pages < 3 || strings.Count(told, want) != pages {
			t.Errorf("want %d pages %s: %s", pages, want, told)
		}
	}
	if code, _, errs := run("", "export", "--to", t.TempDir(), "--practice-paper", "A5", demo(t)); code != batch.Unreadable || !strings.Contains(errs, "A4, A3, Letter, Tabloid") {
		t.Errorf("on A5: exit code %d, %s", code, errs)
	}
}

func TestDescribeFoldsWhenAsked(t *testing.T) {
	path := demo(t)
	for _, fold := range []bool{false, true} {
		args := []string{"describe", "--json", path}
		if fold {
			args = append(args, "--fold")
		}
		code, out, errs := run("", args...)
		var described struct {
			Fold *struct {
				Stages []struct {
					Name     string
					MeanStep float64 `json:"mean_step_mm"`
				}
			}
		}
		if err := json.Unmarshal([]byte(out), &described); code != batch.Fine || err != nil {
			t.Fatalf("exit code %d, %v: %s", code, err, errs)
		}
		if (described.Fold != nil) != fold {
			t.Errorf("--fold %t: %+v", fold, described.Fold)
		}
		if fold && (len(described.Fold.Stages) < 8 || described.Fold.Stages[0].Name != "blank") {
			t.Errorf("stages %+v", described.Fold.Stages)
		}
	}
	if _, text, _ := run("", "describe", "--fold", path); !strings.Contains(text, "Stage      tube ") {
		t.Errorf("for people: %s", text)
	}
}

func TestSheetsRanksByWaste(t *testing.T) {
	_, out, _ := run("", "sheets", "--json", demo(t))
	var answer struct {
		Ranked []struct {
			Up    int
			Waste float64 `json:"waste_percent"`
		}
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil {
		t.Fatal(err)
	}
	if len(answer.Ranked) < 20 || answer.Ranked[0].Up == 0 {
		t.Fatalf("ranked %+v", answer.Ranked)
	}
	for i := 1; i < len(answer.Ranked); i++ {
		if answer.Ranked[i].Waste < answer.Ranked[i-1].Waste {
			t.Errorf("row %d wastes less than the row above it", i)
		}
	}
}
