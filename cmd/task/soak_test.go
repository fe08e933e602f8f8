package main

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestSoakDrivesTheWindow(t *testing.T) {
	for _, test := range []struct {
		name, system string
		programs     []string
		args         []string
		want         []string
		wantErr      bool
	}{
		{"a bare Debian", "linux", []string{"apt-get"}, nil, []string{
			"apt-get", "update", "xvfb", "go test", "'^TestSoak$'", "-timeout 1h30m0s", "./app/window -soak 30m0s -keep", "dist",
		}, false},
		{"three minutes on a quiet machine", "linux", allPrograms("apt-get"), []string{"-for", "3m", "-strict"}, []string{"go test", "-soak 3m0s", "-strict"}, false},
		{"another system", "darwin", allPrograms("brew"), nil, nil, true},
		{"nothing can be installed", "linux", nil, nil, nil, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := pretend(t, test.system, true, test.programs...)
			old := filepath.Join(p.path("dist", "soak"), "old.png")
			writeFile(t, old, "")
			err := runSoak(p.machine, test.args)
			if (err != nil) != test.wantErr {
				t.Fatal(err)
			}
			inOrder(t, p.ran, test.want)
			if test.wantErr && len(p.ran) > 0 {
				t.Errorf("ran %q", p.ran)
			}
			if _, err := os.Stat(old); !test.wantErr && !errors.Is(err, os.ErrNotExist) {
				t.Errorf("pictures of an older soak stay: %v", err)
			}
		})
	}
}

func TestSoakRefusesMistypedTimes(t *testing.T) {
	for _, args := range [][]string{{"-for", "0"}, {"-for", "-3m"}, {"-for", "long"}, {"3m"}} {
		p := pretend(t, "linux", true, allPrograms("apt-get")...)
		var usage usageError
		if err := runSoak(p.machine, args); !errors.As(err, &usage) || len(p.ran) > 0 {
			t.Errorf("%q: got %v, ran %q", args, err, p.ran)
		}
	}
}
