//go:build linux

package window

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"gussetwright/app/project"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// The size of the screen that no one sees, and of the window on it.
const screenWidth, screenHeight = 1440, 900

// patience is how long the test waits for the window to do something.
const patience = 30 * time.Second

// screen is the real program on a screen of its own, driven by mouse and keys.
type screen struct {
	t         *testing.T
	display   string
	home      string
	program   *exec.Cmd
	more      []string // variables of the environment of the program alone
	log       bytes.Buffer
	serverLog bytes.Buffer
	window    string
	// twin is the same window in this process, laid out alike: it tells where things
	// are. The real one has a menu above, menuHeight high.
	twin       *Window
	menuHeight float32
}

// buildProgram builds one of the programs in cmd as it is handed to users, and returns
// its path. The test is skipped where what building and driving a window needs is missing.
func buildProgram(t *testing.T, name string) string {
	t.Helper()
	for _, tool := range []string{"Xvfb", "xdotool", "import", "gcc", "pkg-config"} {
		geomtest.Tool(t, tool)
	}
	if _, err := os.Stat("/usr/include/GL/gl.h"); err != nil {
		geomtest.Missing(t, "libgl-dev")
	}
	path := filepath.Join(t.TempDir(), name)
	build := exec.Command("go", "build", "-o", path, "./cmd/"+name)
	build.Dir = geomtest.Root(t)
	build.Env = append(os.Environ(), "CGO_ENABLED=1")
	if output, err := build.CombinedOutput(); err != nil {
		t.Fatalf("build %s: %v\n%s", name, err, output)
	}
	return path
}

// newScreen starts Xvfb on a free display, with a home folder in which the program
// finds light appearance and a folder for files.
func newScreen(t *testing.T) *screen {
	t.Helper()
	s := &screen{t: t, home: t.TempDir()}
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer read.Close()
	// Without -noreset the server starts afresh whenever its last client leaves, and
	// drops a program that is just about to come.
	server := exec.Command("Xvfb", "-noreset", "-displayfd", "3", "-screen", "0", strconv.Itoa(screenWidth)+"x"+strconv.Itoa(screenHeight)+"x24")
	server.ExtraFiles = []*os.File{write}
	server.Stderr = &s.serverLog
	if err := server.Start(); err != nil {
		t.Fatal(err)
	}
	write.Close()
	t.Cleanup(func() {
		server.Process.Signal(syscall.SIGTERM) // killed, it would leave the display locked
		server.Wait()
	})
	// The server writes the number and the line end one after the other, and ends
	// when nobody reads the second.
	number, err := bufio.NewReader(read).ReadString('\n')
	if err != nil {
		t.Fatalf("Xvfb named no display: %v\n%s", err, s.serverLog.Bytes())
	}
	s.display = ":" + strings.TrimSpace(number)
	preferences := filepath.Join(s.home, ".config", "fyne", "net.gussetwright.app", "preferences.json")
	values := map[string]string{"appearance": "light"}
	maps.Copy(values, s.folders())
	data, err := json.Marshal(values)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(preferences), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, folder := range s.folders() {
		if err := os.MkdirAll(folder, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(preferences, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return s
}

// files is the folder that the program writes files to.
func (s *screen) files() string { return filepath.Join(s.home, "files") }

// artworkFolder is where the program looks for artwork first.
func (s *screen) artworkFolder() string { return filepath.Join(s.home, "artwork") }

// folders are the folders that the program remembers, by the keys of its preferences.
func (s *screen) folders() map[string]string {
	return map[string]string{"files-folder": s.files(), "artwork-folder": s.artworkFolder()}
}

// environment is what every program on the screen runs in.
func (s *screen) environment() []string {
	return append(os.Environ(), "DISPLAY="+s.display, "HOME="+s.home, "XDG_CONFIG_HOME="+filepath.Join(s.home, ".config"),
		"XDG_CACHE_HOME="+filepath.Join(s.home, ".cache"), "LANG=en_US.UTF-8", "LC_ALL=", "LC_MEASUREMENT=en_GB.UTF-8", "FYNE_SCALE=1", "DBUS_SESSION_BUS_ADDRESS=unix:path=/dev/null")
}

func (s *screen) start(program, path string) {
	s.t.Helper()
	s.program = exec.Command(program, path)
	s.program.Env = append(s.environment(), s.more...)
	s.program.Stderr = &s.log
	geomtest.TakeNetwork(s.t, s.program) // it needs none
	if err := s.program.Start(); err != nil {
		s.t.Fatal(err)
	}
	s.t.Cleanup(func() { s.program.Process.Kill() })
	s.waitFor("a window", func() bool {
		s.window = s.read("search", "--onlyvisible", "--name", "Gussetwright")
		return s.window != ""
	})
	s.do("windowmove", s.window, "0", "0")
	s.do("windowsize", "--sync", s.window, strconv.Itoa(screenWidth), strconv.Itoa(screenHeight))
	s.do("windowfocus", s.window)
	s.waitFor("the steps", func() bool { return s.twin == nil || markTop(s.picture()) >= 0 })
	s.settle()
}

// quit ends the program by its own key.
func (s *screen) quit() {
	s.t.Helper()
	s.keys("ctrl+q")
	done := make(chan error, 1)
	go func() { done <- s.program.Wait() }()
	select {
	case err := <-done:
		if err != nil {
			s.t.Fatalf("the program ended with %v\n%s", err, s.log.Bytes())
		}
	case <-time.After(patience):
		s.fail("the program does not quit")
	}
}

// picture returns what the screen shows. The camera fails now and then while windows
// come and go, so it is tried again.
func (s *screen) picture() image.Image {
	s.t.Helper()
	var err error
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		command := exec.Command("import", "-silent", "-window", "root", "png:-")
		command.Env = s.environment()
		var complaint bytes.Buffer
		command.Stderr = &complaint
		var output []byte
		if output, err = command.Output(); err != nil {
			err = fmt.Errorf("%w: %s", err, complaint.Bytes())
			continue
		}
		var picture image.Image
		if picture, err = png.Decode(bytes.NewReader(output)); err == nil {
			return picture
		}
	}
	s.t.Fatalf("take a picture of the screen: %v\n%s\n%s", err, s.serverLog.Bytes(), s.log.Bytes())
	return nil
}

// expectStill checks that nothing is drawn anew while nothing happens, which would keep
// a processor at work.
func (s *screen) expectStill(while string) {
	s.t.Helper()
	s.settle()
	before := s.picture()
	for range 6 {
		time.Sleep(250 * time.Millisecond) // longer than a cursor of the toolkit shines or fades
		if count := differing(before, s.picture()); count > 0 {
			s.t.Errorf("while %s, %d pixels change by themselves", while, count)
			return
		}
	}
}

// settle waits until the screen stays as it is.
func (s *screen) settle() {
	s.t.Helper()
	last, still := s.picture(), 0
	s.waitFor("the window to settle", func() bool {
		next := s.picture()
		if differing(last, next) == 0 {
			still++
		} else {
			still = 0
		}
		last = next
		return still == 2
	})
}

// differing returns the number of pixels in which two pictures differ.
func differing(a, b image.Image) int {
	if a.Bounds() != b.Bounds() {
		return a.Bounds().Dx() * a.Bounds().Dy()
	}
	count := 0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			if a.At(x, y) != b.At(x, y) {
				count++
			}
		}
	}
	return count
}

func (s *screen) waitForTitle(start string) {
	s.t.Helper()
	s.waitFor("a title that begins with "+start, func() bool {
		return strings.HasPrefix(s.read("getwindowname", s.window), start)
	})
}

func (s *screen) body(path string) bag.Body {
	s.t.Helper()
	saved, err := project.Open(path)
	if err != nil {
		s.t.Fatal(err)
	}
	return saved.Spec.Body
}

// expect waits for the saved project to be as wanted.
func (s *screen) expect(what, path string, wanted func(bag.Body) bool) {
	s.t.Helper()
	if body := s.body(path); !wanted(body) {
		s.fail(what + ": saved W " + geometry.FormatNumber(body.Width, 2) + ", D " + geometry.FormatNumber(body.Gusset, 2))
	}
}

func (s *screen) waitFor(what string, happened func() bool) {
	s.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		if happened() {
			return
		}
	}
	s.fail("waited in vain for " + what)
}

// fail ends the test and keeps a picture of the screen.
func (s *screen) fail(why string) {
	s.t.Helper()
	kept := filepath.Join(os.TempDir(), "gussetwright-end-to-end.png")
	if out, err := os.Create(kept); err == nil {
		png.Encode(out, s.picture())
		out.Close()
	}
	s.t.Fatalf("%s; the screen is in %s\n%s", why, kept, s.log.Bytes())
}

func (s *screen) do(args ...string) {
	s.t.Helper()
	command := exec.Command("xdotool", args...)
	command.Env = s.environment()
	if output, err := command.CombinedOutput(); err != nil {
		s.t.Fatalf("xdotool %v: %v\n%s", args, err, output)
	}
}

// read returns what xdotool prints, or "" when it finds nothing.
func (s *screen) read(args ...string) string {
	command := exec.Command("xdotool", args...)
	command.Env = s.environment()
	output, err := command.Output()
	if err != nil {
		return ""
	}
	first, _, _ := strings.Cut(strings.TrimSpace(string(output)), "\n")
	return first
}
