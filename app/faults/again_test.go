package faults

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// asAnother runs the test a second time in a program of its own, which may give up
// rights and bind itself to limits. It returns the folder that both share, and whether
// this is that program.
func asAnother(t *testing.T) (folder string, isOther bool) {
	t.Helper()
	if folder := os.Getenv(folderEnv); folder != "" {
		return folder, true
	}
	folder = t.TempDir()
	open(t, filepath.Dir(folder)) // which is the tester's own
	open(t, folder)
	again := exec.Command(os.Args[0], "-test.run=^"+t.Name()+"$", "-test.v")
	again.Env = append(os.Environ(), folderEnv+"="+folder)
	output, err := again.CombinedOutput()
	switch {
	case err != nil:
		t.Errorf("%v\n%s", err, output)
	case bytes.Contains(output, []byte("--- SKIP")):
		t.Skipf("%s", output)
	}
	return folder, false
}

// open lets every user write into a folder.
func open(t *testing.T, folder string) {
	t.Helper()
	if err := os.Chmod(folder, 0o777); err != nil {
		t.Fatal(err)
	}
}
