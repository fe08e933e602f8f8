package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"gussetwright/app/release"
	"gussetwright/assets"
	"gussetwright/geometry/geomtest"
)

// build builds the command and puts the demo project beside it.
func build(t testing.TB) (program, demo string) {
	t.Helper()
	folder := t.TempDir()
	program, demo = filepath.Join(folder, "gwbatch.exe"), filepath.Join(folder, assets.DemoName)
	command := exec.Command("go", "build", "-o", program, "./cmd/gwbatch")
	command.Dir = geomtest.Root(t)
	command.Env = append(os.Environ(), "CGO_ENABLED=0")
	if output, err := command.CombinedOutput(); err != nil {
		t.Fatalf("build gwbatch: %v\n%s", err, output)
	}
	if err := os.WriteFile(demo, assets.Demo, 0o644); err != nil {
		t.Fatal(err)
	}
	return program, demo
}

func TestProgramDescribesTheDemo(t *testing.T) {
	program, demo := build(t)
	output, err := exec.Command(program, "describe", demo).Output()
	if err != nil || len(output) == 0 {
		t.Errorf("%v, %q", err, output)
	}
	err = exec.Command(program, "describe", demo+".none").Run()
	if exit, ok := err.(*exec.ExitError); !ok || exit.ExitCode() != 2 {
		t.Errorf("a missing file gave %v, want exit code 2", err)
	}
}

func TestProgramSaysItsVersion(t *testing.T) {
	program, _ := build(t)
	for _, word := range []string{"version", "--version"} {
		output, err := exec.Command(program, word).Output()
		if want := "gwbatch " + release.Version() + "\n"; err != nil || string(output) != want {
			t.Errorf("%s: %v, %q, want %q", word, err, output, want)
		}
	}
}

// BenchmarkDescribe is the whole command, from start to end of the process.
func BenchmarkDescribe(b *testing.B) {
	program, demo := build(b)
	for b.Loop() {
		if err := exec.Command(program, "describe", "--json", demo).Run(); err != nil {
			b.Fatal(err)
		}
	}
}
