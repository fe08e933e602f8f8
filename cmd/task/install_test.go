package main

import (
	"errors"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestMissingPrograms(t *testing.T) {
	tests := []struct {
		has, want []string
	}{
		{allPrograms(), nil},
		{nil, allPrograms()},
		{[]string{"qpdf", "pdftoppm", "mutool", "rsvg-convert", "ezdxf", "zip", "unzip", "identify", "npm"}, []string{"gs", "chromium", "node"}},
	}
	for _, test := range tests {
		got := commandsOf(missingPrograms(func(name string) bool { return slices.Contains(test.has, name) }))
		if !slices.Equal(got, test.want) {
			t.Errorf("with %v: got %v, want %v", test.has, got, test.want)
		}
	}
}

// The names of the Debian packages are checked against dpkg, which knows what
// every installed package brought.
func TestDebianPackagesBringTheirCommands(t *testing.T) {
	if _, err := exec.LookPath("dpkg"); err != nil {
		t.Skip("dpkg is not installed: no Debian")
	}
	for _, p := range programs() {
		status, err := exec.Command("dpkg", "-s", p.debian).Output()
		if err != nil || !strings.Contains(string(status), "Status: install ok installed") {
			t.Logf("%s is not installed as a Debian package", p.debian)
			continue
		}
		name := p.command
		if path, err := exec.LookPath(name); err == nil {
			if real, err := filepath.EvalSymlinks(path); err == nil && strings.Contains(filepath.Base(real), name) {
				name = filepath.Base(real) // one of several that go by the name
			}
		}
		owner, err := exec.Command("dpkg", "-S", "*/bin/"+name).Output()
		if err != nil || !strings.HasPrefix(string(owner), p.debian) {
			t.Errorf("%s: dpkg says %q (%v), want %s", p.command, owner, err, p.debian)
		}
	}
}

func TestWhoMayInstall(t *testing.T) {
	tests := []struct {
		name     string
		system   string
		root     bool
		programs []string
		broken   string
		want     string // the start of the first command; empty when none may be run
	}{
		{"root on Debian", "linux", true, []string{"apt-get"}, "", "env DEBIAN_FRONTEND=noninteractive apt-get "},
		{"sudo without password", "linux", false, []string{"apt-get", "sudo"}, "", "sudo -n env DEBIAN_FRONTEND=noninteractive apt-get "},
		{"sudo that asks", "linux", false, []string{"apt-get", "sudo"}, "sudo -n true", ""},
		{"no sudo", "linux", false, []string{"apt-get"}, "", ""},
		{"another Linux", "linux", true, []string{"dnf"}, "", ""},
		{"macOS with an apt-get of its own", "darwin", true, []string{"apt-get"}, "", ""},
		{"Windows", "windows", false, []string{"choco"}, "", ""},
	}
	for _, test := range tests {
		p := pretend(t, test.system, test.root, test.programs...)
		p.broken = test.broken
		prefix, allowed := aptPrefix(p.machine)
		if allowed != (test.want != "") {
			t.Errorf("%s: may install is %v", test.name, allowed)
		}
		update, _ := aptCommands(prefix, nil)
		if allowed && !strings.HasPrefix(update.String(), test.want) {
			t.Errorf("%s: %s, want it to start with %s", test.name, update, test.want)
		}
	}
}

func TestInstallRefreshesListsFirst(t *testing.T) {
	p := pretend(t, "linux", true, "apt-get", "qpdf", "pdftoppm", "mutool", "gs", "zip", "unzip", "identify", "chromium", "node", "npm")
	if err := installPrograms(p.machine, missingPrograms(p.has)); err != nil {
		t.Fatal(err)
	}
	if len(p.ran) != 2 || !strings.HasSuffix(p.ran[0], " update") ||
		!strings.HasSuffix(p.ran[1], " install -y --no-install-recommends librsvg2-bin python3-ezdxf") {
		t.Errorf("ran\n%s", strings.Join(p.ran, "\n"))
	}
}

func TestMirrorThatFails(t *testing.T) {
	tests := []struct {
		name, broken string
		want         []string
		wantErr      bool
	}{
		{"all of it", "apt-get", []string{"could not install qpdf", "mirror is down, slow or not reachable", "-no-install"}, true},
		{"the installation", " install ", []string{"could not install qpdf", "messages of apt-get above", "-no-install"}, true},
		{"a stale list of a third party", " update", nil, false},
	}
	for _, test := range tests {
		p := pretend(t, "linux", true, "apt-get")
		p.broken = test.broken
		err := installPrograms(p.machine, missingPrograms(p.has))
		if (err != nil) != test.wantErr {
			t.Errorf("%s: %v", test.name, err)
			continue
		}
		if test.wantErr && !errors.Is(err, errPretended) {
			t.Errorf("%s: the cause is lost: %v", test.name, err)
		}
		for _, words := range test.want {
			if !strings.Contains(err.Error(), words) {
				t.Errorf("%s: %q does not say %q", test.name, err, words)
			}
		}
	}
}

func TestProgramThatThePackageDidNotBring(t *testing.T) {
	p := pretend(t, "linux", true, allPrograms("apt-get")...)
	p.programs = slices.DeleteFunc(p.programs, func(name string) bool { return name == "gs" })
	p.run = func(command) error { return nil } // installs nothing
	err := installPrograms(p.machine, missingPrograms(p.has))
	if err == nil || !strings.Contains(err.Error(), "gs cannot be found") {
		t.Errorf("got %v, want a complaint about gs", err)
	}
}
