package main

import (
	"slices"
	"strings"
	"testing"
)

func TestAdviceForEachSystem(t *testing.T) {
	tests := []struct {
		name, system string
		manager      string
		missing      []string
		want         []string
	}{
		{
			"Homebrew", "darwin", "brew",
			[]string{"pdftoppm", "gs", "ezdxf"},
			[]string{"brew install poppler ghostscript", "pipx install ezdxf"},
		},
		{"one package for node and npm", "darwin", "brew", []string{"node", "npm"}, []string{"brew install node"}},
		{"Chocolatey", "windows", "choco", []string{"mutool", "rsvg-convert"}, []string{"choco install mupdf rsvg-convert"}},
		{
			"winget knows less", "windows", "winget",
			[]string{"node", "mutool"},
			[]string{"winget install OpenJS.NodeJS", "winget has no package known to us for mutool: see the makers' pages"},
		},
		{"Fedora", "linux", "dnf", []string{"rsvg-convert", "npm"}, []string{"sudo dnf install librsvg2-tools npm"}},
		{"Arch", "linux", "pacman", []string{"mutool", "ezdxf"}, []string{"sudo pacman -S mupdf-tools", "pipx install ezdxf"}},
		{"Debian without sudo", "linux", "apt-get", []string{"ezdxf"}, []string{"sudo apt-get install python3-ezdxf"}},
		{"a Mac without a manager", "darwin", "", []string{"qpdf"}, []string{"brew install qpdf"}},
		{
			"a Linux of another family", "linux", "",
			[]string{"qpdf"},
			[]string{"sudo apt-get install qpdf", "sudo dnf install qpdf", "sudo pacman -S qpdf"},
		},
	}
	for _, test := range tests {
		has := func(name string) bool { return name == test.manager }
		missing := missingPrograms(func(name string) bool { return !slices.Contains(test.missing, name) })
		if got := advice(test.system, has, missing); !slices.Equal(got, test.want) {
			t.Errorf("%s: got %q, want %q", test.name, got, test.want)
		}
	}
}

func TestEveryProgramIsCoveredOnEverySystem(t *testing.T) {
	for _, system := range []string{"linux", "darwin", "windows", "freebsd"} {
		for _, p := range programs() {
			lines := advice(system, func(string) bool { return false }, []program{p})
			if !strings.Contains(strings.Join(lines, "\n"), "install") && !strings.Contains(strings.Join(lines, "\n"), "-S ") {
				t.Errorf("%s on %s: %q tells nothing to install", p.command, system, lines)
			}
		}
	}
}

func TestSkipNoteNamesProgramsAndRemedy(t *testing.T) {
	note := skipNote([]program{{"gs", "ghostscript"}}, []string{"brew install ghostscript"})
	for _, words := range []string{"gs were skipped", "brew install ghostscript"} {
		if !strings.Contains(note, words) {
			t.Errorf("%q does not say %q", note, words)
		}
	}
}
