package main

import (
	"fmt"
	"io"
	"strings"
)

// task is one chore.
type task struct {
	name  string
	usage string // the words behind "go run ./cmd/task"
	short string // one line for the overview
	help  string
	do    func(m *machine, args []string) error
}

// tasks returns the chores in the order in which a newcomer meets them.
func tasks() []task {
	return []task{
		{"run", "run", "open the window on the demo bag", runHelp, runDemo},
		{"test", "test [-no-install]", "set up everything and pass all tests", testHelp, runTests},
		{"race", "race", "pass all tests with the race detector", raceHelp, runRace},
		{"bench", "bench [-only REGEXP] [-markdown]", "measure what the program must reach", benchHelp, runBenchmarks},
		{"fuzz", "fuzz [-time 1m] [PART-OF-NAME ...]", "look for input that breaks a reader", fuzzHelp, runFuzz},
		{"soak", "soak [-for 30m] [-strict]", "use the window for half an hour and report", soakHelp, runSoak},
		{"golden", "golden", "write the golden files anew", goldenHelp, writeGolden},
		{"package", "package [-twice] [-try] [-no-install]", "build what is handed to users", packageHelp, buildPackages},
	}
}

func taskNamed(name string) (task, bool) {
	for _, t := range tasks() {
		if t.name == name {
			return t, true
		}
	}
	return task{}, false
}

func nameList() string {
	var names []string
	for _, t := range tasks() {
		names = append(names, t.name)
	}
	return strings.Join(names, ", ")
}

func writeHelp(w io.Writer) {
	fmt.Fprint(w, `The chores of a contributor to Gussetwright, the same on every system.

usage: go run ./cmd/task TASK [OPTIONS]

`)
	for _, t := range tasks() {
		fmt.Fprintf(w, "  %-9s %s\n", t.name, t.short)
	}
	fmt.Fprint(w, `
New here? Start with "run" to see what the program makes, then "test" before you
change anything and after you have. "go run ./cmd/task TASK --help" says what a
task does, step by step, and what it leaves on your disk.

Everything is built without cgo, so no C compiler and no X libraries are needed.
A task prints each command before it runs it: copy the line to repeat that step alone.
A built task ends with code 0 when all went well, 2 for a mistyped command line and
otherwise with the code of the command that failed; "go run" makes 1 of any but 0.
`)
}

const runHelp = `Builds cmd/gussetwright into bin/ and opens its window on a copy of the demo bag in
dist/. On Debian and its relatives it installs the C compiler and the headers that
the build needs; elsewhere a message says what is missing. The first build takes
some minutes.

Where there is no display, or the window cannot be built, it builds cmd/gwbatch
instead, exports the demo bag to dist/demo, prints what the program knows about
the bag, and lists the files it wrote.
`

const testHelp = `Sets up what the tests need and runs them all:

  1. installs the outside programs that check our files (` + programList + `).
     On Debian and its relatives that happens by itself, as root or with a sudo
     that asks for no password. Elsewhere you are told what to install with the
     manager that you have, and the tests that need a missing program are skipped.
  2. installs the npm packages of testdata/outside/package-lock.json into your
     cache folder, once, and again when that file changes.
  3. lists Go files that gofmt would change; any is a failure.
  4. go vet ./...
  5. gofumpt, staticcheck (as staticcheck.conf says) and govulncheck, each pinned and
     fetched by the go command. The reports of govulncheck are pinned too and name
     their day; it looks at what a release is built with, ` + releaseGo + `,
     which the go command fetches where it is missing.
  6. go test -count=1 ./... without cgo
     On Linux those of app/window build the real window with cgo, start it on a
     screen that no one sees and drive it with mouse and keys.
  7. on Linux, go vet and go build of cmd/gussetwright with cgo.

Once everything is there, GUSSETWRIGHT_OUTSIDE is set for the tests, and from then
on a missing tool fails a test instead of skipping it.

options:
  -no-install   install and fetch nothing; tests whose tools are missing and step 5
                are skipped. For work without a network.
`

const raceHelp = `Builds every test with the race detector and runs them, one package at a time. It
needs a C compiler and the headers of OpenGL and X11, which it installs on Debian and
its relatives, and takes many times as long as the plain tests.

For one package alone:
  CGO_ENABLED=1 go test -race ./app/latest
`

const benchHelp = `Measures everything that the program was built to reach (time, memory, size) and prints
one table: figure, aim, whether it is met, what others take for the same (their programs
and libraries run in the same benchmarks), and the benchmark it comes from. An aim that is
not met is written NOT MET and is no failure; a benchmark that breaks is.

The benchmarks of one package after another run on one processor. On Linux, where Xvfb and
what building the window needs are there, the window is started as well, several times, and
a bare window of the toolkit beside it. All takes some ten minutes; let the machine do
nothing else meanwhile. Progress goes to the error output, the table to the output.

options:
  -only REGEXP  only rows whose group, words or benchmark match, such as -only window:
  -markdown     print the table in Markdown, as the README has it

Every package has more benchmarks than the table has rows. To run those of one package, or
to compare two versions, use the go command:
  go test -run ^$ -bench Lay -benchmem -count 10 ./geometry/sheet
`

const fuzzHelp = `Finds every fuzz target in the module and feeds each, in turn, with made-up input.

A target that breaks is reported and the others still get their turn; the exit
code is 1 when any did not hold. Go writes the input that broke it to testdata/fuzz beside
the test. Mend the code, turn the input into a row of a table test, and commit both.

options:
  -time 1m      how long for each target, such as 30s, 5m or 1h
arguments:
  PART-OF-NAME  only targets whose name contains one of the words,
                for example: go run ./cmd/task fuzz -time 5m ParseLength
`

const soakHelp = `Builds the window, starts it under Xvfb on a copy of the demo bag, without a network, and uses
it by mouse and keys over and over: sizes typed and dragged, the bag turned, the lesson
and the meeting view, every step, artwork imported and changed on disk, all files
exported, steps undone, the project opened again. The order is drawn from a fixed seed.

At the end it prints memory over time, goroutines, and how long the window took to
answer and during what. It fails when memory rises all the while (judged from ten minutes
on), when goroutines stay behind, or when the window does not do what it is told.
Pictures of the window, to be looked at, are left in dist/soak.

options:
  -for 30m      how long
  -strict       fail as well for any answer over 100 ms; the machine must do nothing else

It needs Linux and what drives the real window, which is installed on Debian and its
relatives.
`

const goldenHelp = `Runs the tests of every package that compares with golden files, with -update, so
that testdata/golden holds what the program writes now.

Golden files say what is right; the program does not. Read the whole difference
(git diff testdata/golden) and commit it only when you can say why every line
of it changed.
`

const packageHelp = `Builds what is handed to users, into dist/:

  gwbatch-SYSTEM-PROCESSOR              the program without a window for Linux, macOS and
                                        Windows, each for amd64 and arm64
  gussetwright-VERSION-linux-amd64.tar.gz
                                        both programs with icon and menu entry
  gussetwright-VERSION-windows-amd64.zip
                                        both programs for Windows
  gussetwright-VERSION-sha256.txt       the sums of all these

The version is that of FyneApp.toml and must be the newest in assets/changes.md, whose
day is the time of all files in the archives. The licences of every module that is
linked in are gathered from the module cache into the archives.

The archives are built on Linux on a 64-bit PC. On Debian and its relatives the C
compiler, the headers and mingw-w64 are installed where they are missing; what cannot
be built is named. The same source, with the same compilers, gives the same bytes
anywhere: no time, no path and no mark of the version control goes into a file.

options:
  -twice        build everything again, from a copy in another folder with an empty
                cache, and compare all bytes
  -try          unpack the archives, start their programs (the window under Xvfb, those
                of Windows under Wine), compare what they export, and leave pictures of
                the window in dist/
  -no-install   install nothing; what cannot be built is left out
`
