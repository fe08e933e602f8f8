package main

import (
	"os"
	"os/exec"
	"runtime"
	"testing"
)

// The reader of PDF artwork is compiled and kept only once there is some: a bag without
// leaves nothing in the cache of the user.
func TestNoCacheWithoutPDFArtwork(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the cache folder is named by a variable on Linux only")
	}
	program, demo := build(t)
	cache := t.TempDir()
	for _, arguments := range [][]string{{"--help"}, {"describe", demo}, {"check", demo}} {
		command := exec.Command(program, arguments...)
		command.Env = append(os.Environ(), "XDG_CACHE_HOME="+cache)
		if output, err := command.CombinedOutput(); err != nil && command.ProcessState.ExitCode() != 1 { // 1: there are findings
			t.Fatalf("%q: %v\n%s", arguments, err, output)
		}
		if entries, err := os.ReadDir(cache); err != nil || len(entries) > 0 {
			t.Errorf("%q leaves %d entries (%v), such as %v", arguments, len(entries), err, entries)
		}
	}
}
