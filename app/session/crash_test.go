package session

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"gussetwright/app/document"
)

// crashFolderEnv tells the test program that it is to be killed.
const crashFolderEnv = "GUSSETWRIGHT_TEST_CRASH"

func TestMain(m *testing.M) {
	if folder := os.Getenv(crashFolderEnv); folder != "" {
		editUntilKilled(folder)
	}
	os.Exit(m.Run())
}

// editUntilKilled changes the bag on and on, and says after each copy which edit
// it holds.
func editUntilKilled(folder string) {
	b := &bench{doc: document.New()}
	b.Session = New(b.doc, Options{Recovery: folder})
	for edit := 1; ; edit++ {
		b.setWidth(widthOf(edit))
		if err := b.Autosave(); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		fmt.Println(edit)
	}
}

// widthOf tells the edits apart; they are fewer than 80 000 in the time they have.
func widthOf(edit int) float64 { return 100 + float64(edit)/100 }

// Fifty programs are killed while they write: each copy opens and holds the last
// edit that was reported or the one under way.
func TestKilledDuringAutosave(t *testing.T) {
	const kills = 50
	recovery := t.TempDir()
	random := rand.New(rand.NewPCG(2, 71))
	for kill := range kills {
		reported := killedAfter(t, recovery, time.Duration(random.IntN(20_000))*time.Microsecond)
		b := start(t, recovery)
		notes, err := b.Restore(recoverable(t, b, 1)[0])
		if err != nil || len(notes) != 0 {
			t.Fatalf("kill %d: notes %q, %v", kill, notes, err)
		}
		if got := b.width(); got != widthOf(reported) && got != widthOf(reported+1) {
			t.Errorf("kill %d: width %g, reported was edit %d", kill, got, reported)
		}
		must(t)(b.Close())
		if left := names(t, recovery); len(left) != 0 {
			t.Fatalf("kill %d: left %q", kill, left)
		}
	}
}

// killedAfter runs a program that edits and kills it some time after its first
// copy. It returns the last edit that was reported.
func killedAfter(t *testing.T, recovery string, delay time.Duration) (reported int) {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), crashFolderEnv+"="+recovery)
	output, err := child.StdoutPipe()
	must(t)(err)
	must(t)(child.Start())
	for lines := bufio.NewScanner(output); lines.Scan(); {
		if reported, err = strconv.Atoi(lines.Text()); err != nil {
			t.Errorf("the program to be killed says %q", lines.Text())
		}
		if reported == 1 {
			time.AfterFunc(delay, func() { child.Process.Kill() })
		}
	}
	if err := child.Wait(); err == nil {
		t.Error("the program ended by itself")
	}
	return reported
}

// FuzzCopy: no copy, however damaged, stops the program or changes what is open
// without being restored whole.
func FuzzCopy(f *testing.F) {
	f.Add([]byte(`{"path": "/x/tea.gusset", "sum": "", "artwork": {"front.pdf": "../../artwork-1"}, "bag": {"bag": {"width_mm": 300}}}`))
	f.Add([]byte(`{"bag": null}`))
	f.Add([]byte(`[`))
	recovery := f.TempDir()
	folder := filepath.Join(recovery, "1-fuzz")
	f.Fuzz(func(t *testing.T, data []byte) {
		must(t)(os.MkdirAll(folder, 0o755))
		write(t, filepath.Join(folder, copyName), string(data))
		b := start(t, recovery)
		b.setWidth(777)
		if _, err := b.Restore(Recovery{folder: folder}); err != nil && b.width() != 777 {
			t.Errorf("width %g after %v", b.width(), err)
		}
		if state := b.doc.State(); state.Err != nil || !state.Dirty {
			t.Errorf("restored work cannot be drawn or counts as saved: %v", state.Err)
		}
	})
}
