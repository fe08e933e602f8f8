package main

import "strings"

// program is an outside program that tests run, and the Debian packages that
// bring it. A command that begins with a slash is a file that must be there.
type program struct {
	command string
	debian  string
}

// programs returns the outside programs. Node and npm run the checks that other
// makers published as npm packages.
func programs() []program {
	return []program{
		{"qpdf", "qpdf"},
		{"pdftoppm", "poppler-utils"},
		{"mutool", "mupdf-tools"},
		{"gs", "ghostscript"},
		{"rsvg-convert", "librsvg2-bin"},
		{"ezdxf", "python3-ezdxf"},
		{"zip", "zip"},
		{"unzip", "unzip"},
		{"identify", "imagemagick"},
		{"chromium", "chromium"},
		{"node", "nodejs"},
		{"npm", "npm"},
	}
}

const programList = "qpdf, poppler, mupdf, ghostscript, librsvg, ezdxf, zip, unzip, imagemagick, chromium, node, npm"

// missingPrograms returns the outside programs that the machine lacks.
func missingPrograms(has func(string) bool) []program { return missingOf(programs(), has) }

// missingOf returns those of a list that the machine lacks.
func missingOf(list []program, has func(string) bool) []program {
	var missing []program
	for _, p := range list {
		if !has(p.command) {
			missing = append(missing, p)
		}
	}
	return missing
}

func commandsOf(list []program) []string {
	var names []string
	for _, p := range list {
		names = append(names, p.command)
	}
	return names
}

func debianPackages(list []program) []string {
	var names []string
	for _, p := range list {
		names = append(names, strings.Fields(p.debian)...)
	}
	return names
}

// manager is a package manager and what it calls our outside programs. Names are
// from memory unless it is apt-get, which the tests of this project run on.
type manager struct {
	command string
	install string            // what stands before the names
	names   map[string]string // by the command that the package gives
}

// pipx brings ezdxf wherever the manager of the system does not.
const pipx = "pipx install ezdxf"

// managers returns the package managers of a system, the usual one first.
func managers(system string) []manager {
	switch system {
	case "darwin":
		return []manager{{"brew", "brew install", map[string]string{
			"qpdf": "qpdf", "pdftoppm": "poppler", "mutool": "mupdf-tools", "gs": "ghostscript",
			"rsvg-convert": "librsvg", "zip": "zip", "unzip": "unzip", "identify": "imagemagick", "chromium": "chromium", "node": "node", "npm": "node",
		}}}
	case "windows":
		return []manager{
			{"choco", "choco install", map[string]string{
				"qpdf": "qpdf", "pdftoppm": "poppler", "mutool": "mupdf", "gs": "ghostscript",
				"rsvg-convert": "rsvg-convert", "zip": "zip", "unzip": "unzip", "identify": "imagemagick", "chromium": "chromium", "node": "nodejs", "npm": "nodejs",
			}},
			{"winget", "winget install", map[string]string{
				"qpdf": "QPDF.QPDF", "gs": "ArtifexSoftware.GhostScript",
				"node": "OpenJS.NodeJS", "npm": "OpenJS.NodeJS",
			}},
		}
	}
	return []manager{
		{"apt-get", "sudo apt-get install", debianNames()},
		{"dnf", "sudo dnf install", map[string]string{
			"qpdf": "qpdf", "pdftoppm": "poppler-utils", "mutool": "mupdf", "gs": "ghostscript",
			"rsvg-convert": "librsvg2-tools", "ezdxf": "python3-ezdxf", "zip": "zip", "unzip": "unzip", "identify": "ImageMagick", "chromium": "chromium", "node": "nodejs", "npm": "npm",
		}},
		{"pacman", "sudo pacman -S", map[string]string{
			"qpdf": "qpdf", "pdftoppm": "poppler", "mutool": "mupdf-tools", "gs": "ghostscript",
			"rsvg-convert": "librsvg", "zip": "zip", "unzip": "unzip", "identify": "imagemagick", "chromium": "chromium", "node": "nodejs", "npm": "npm",
		}},
	}
}

func debianNames() map[string]string {
	names := map[string]string{}
	for _, p := range programs() {
		names[p.command] = p.debian
	}
	return names
}
