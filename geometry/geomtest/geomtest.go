// Package geomtest holds what the tests of all packages share: golden files,
// random bags, and the tools of other makers that check our files. Only tests
// import it.
package geomtest

import (
	"bytes"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write golden files instead of comparing with them")

// OutsideEnv names the environment variable that the task runner sets once it
// has installed every outside tool: the folder with the npm packages. While it
// is set, a missing tool fails a test; otherwise the test is skipped.
const OutsideEnv = "GUSSETWRIGHT_OUTSIDE"

// Root returns the top folder of the module.
func Root(t testing.TB) string {
	t.Helper()
	folder, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(folder, "go.mod")); err == nil {
			return folder
		}
		parent := filepath.Dir(folder)
		if parent == folder {
			t.Fatal("no go.mod above the test")
		}
		folder = parent
	}
}

// Golden compares got with testdata/golden/NAME, or writes it there under -update.
func Golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join(Root(t), "testdata", "golden", filepath.FromSlash(name))
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("read golden file: %v (run the test with -update to write it)", err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from what is written now; run the test with -update and review the change\n%s",
			path, firstDifference(got, want))
	}
}

// Tool returns the path of an outside program, or skips the test where it is not
// installed. Under the task runner a missing tool is a failure.
func Tool(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		Missing(t, name)
	}
	return path
}

// Run runs an outside program and returns what it printed. A program that fails
// fails the test.
func Run(t testing.TB, name string, args ...string) []byte {
	t.Helper()
	command := exec.Command(Tool(t, name), args...)
	var stderr bytes.Buffer
	command.Stderr = &stderr
	output, err := command.Output()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s\n%s", name, args, err, stderr.Bytes(), output)
	}
	return output
}

// Node runs one of the scripts in testdata/outside with the npm packages that the
// task runner installed, and returns what it printed.
func Node(t *testing.T, script string, args ...string) []byte {
	t.Helper()
	folder := os.Getenv(OutsideEnv)
	if folder == "" {
		cache, err := os.UserCacheDir()
		if err != nil {
			Missing(t, "a cache folder for npm packages")
		}
		folder = filepath.Join(cache, "gussetwright", "outside")
	}
	modules := filepath.Join(folder, "node_modules")
	if _, err := os.Stat(modules); err != nil {
		Missing(t, "npm packages in "+folder)
	}
	t.Setenv("NODE_PATH", modules)
	path := filepath.Join(Root(t), "testdata", "outside", script)
	return Run(t, "node", append([]string{path}, args...)...)
}

// Missing skips the test, or fails it under the task runner, because something is
// not installed.
func Missing(t testing.TB, what string) {
	t.Helper()
	if os.Getenv(OutsideEnv) != "" {
		t.Fatalf("%s is not installed; the task runner should have installed it", what)
	}
	t.Skipf("%s is not installed; go run ./cmd/task test installs it", what)
}

func firstDifference(got, want []byte) string {
	gotLines, wantLines := bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n"))
	for i := range min(len(gotLines), len(wantLines)) {
		if !bytes.Equal(gotLines[i], wantLines[i]) {
			return "got:  " + clip(gotLines[i]) + "\nwant: " + clip(wantLines[i])
		}
	}
	return "one is longer than the other"
}

func clip(line []byte) string {
	const most = 200
	if len(line) > most {
		line = line[:most]
	}
	return string(line)
}
