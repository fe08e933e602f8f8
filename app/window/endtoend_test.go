//go:build linux

package window

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

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
	log       bytes.Buffer
	serverLog bytes.Buffer
	window    string
	// twin is the same window in this process, laid out alike: it tells where things
	// are. The real one has a menu above, menuHeight high.
	twin       *Window
	menuHeight float32
}

// TestEndToEnd starts the real program under Xvfb, without a network, types a size, drags a slider and a
// panel edge, undoes, saves, opens again, writes the PDF and compares it with that of
// gwbatch for the saved file.
func TestEndToEnd(t *testing.T) {
	gussetwright, gwbatch := buildPrograms(t)
	s := newScreen(t)
	path := demoFile(t)
	s.start(gussetwright, path)
	s.makeTwin(path)

	s.click(s.entry("190"))
	s.expectStill("an entry has the focus")
	s.keys("ctrl+a")
	s.typed("2*120+10")
	s.keys("Return")
	s.waitForTitle("demo*")
	s.save()
	s.expect("width typed", path, func(b bag.Body) bool { return b.Width == 250 })

	s.twin.open(path)
	slider := s.slider(1) // that of the gusset depth
	s.drag(s.at(slider, 0.33, 0.5), s.at(slider, 0.6, 0.5))
	s.save()
	s.expect("slider dragged", path, func(b bag.Body) bool { return b.Gusset > 95 })
	s.keys("ctrl+z")
	s.save()
	s.expect("drag undone in one step", path, func(b bag.Body) bool { return b.Gusset == 95 && b.Width == 250 })

	s.twin.open(path)
	edge := s.onBlank(geometry.Vec2{X: 250, Y: 250})
	s.drag(edge, edge.AddXY(-20, 0))
	s.save()
	s.expect("panel edge dragged", path, func(b bag.Body) bool { return b.Width < 245 && b.Width > 150 })
	s.keys("ctrl+z")
	s.keys("ctrl+y")
	s.keys("ctrl+s")
	dragged := s.body(path)
	s.quit()

	s.start(gussetwright, path)
	s.twin.open(path)
	s.keys("ctrl+7")
	s.twin.goToStep(7)
	s.settle()
	s.click(s.at(s.twin.files.Button(), 0.5, 0.5))
	pdf := filepath.Join(s.files(), "demo-dieline.pdf")
	s.waitFor("the PDF", func() bool { _, err := os.Stat(pdf); return err == nil })
	s.quit()
	if s.body(path) != dragged {
		t.Errorf("writing files changed the bag from %+v to %+v", dragged, s.body(path))
	}
	compareWithBatch(t, gwbatch, path, pdf)
}

// compareWithBatch writes the dieline of the saved project with gwbatch: it must be
// the same file, byte for byte.
func compareWithBatch(t *testing.T, gwbatch, path, pdf string) {
	t.Helper()
	folder := t.TempDir()
	if output, err := exec.Command(gwbatch, "export", "--only", "dieline", "--to", folder, path).CombinedOutput(); err != nil {
		t.Fatalf("gwbatch export: %v\n%s", err, output)
	}
	want, err := os.ReadFile(filepath.Join(folder, "demo-dieline.pdf"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(pdf)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("the window wrote %d bytes, gwbatch %d others", len(got), len(want))
	}
}

// buildPrograms builds the window and the batch command.
func buildPrograms(t *testing.T) (gussetwright, gwbatch string) {
	t.Helper()
	if runtime.GOOS != "linux" {
		t.Skip("the real window is driven under Xvfb, on Linux")
	}
	for _, tool := range []string{"Xvfb", "xdotool", "import", "gcc", "pkg-config"} {
		geomtest.Tool(t, tool)
	}
	if _, err := os.Stat("/usr/include/GL/gl.h"); err != nil {
		geomtest.Missing(t, "libgl-dev")
	}
	folder := t.TempDir()
	for _, name := range []string{"gussetwright", "gwbatch"} {
		build := exec.Command("go", "build", "-o", filepath.Join(folder, name), "./cmd/"+name)
		build.Dir = geomtest.Root(t)
		build.Env = append(os.Environ(), "CGO_ENABLED=1")
		if output, err := build.CombinedOutput(); err != nil {
			t.Fatalf("build %s: %v\n%s", name, err, output)
		}
	}
	return filepath.Join(folder, "gussetwright"), filepath.Join(folder, "gwbatch")
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
	values, err := json.Marshal(map[string]any{"appearance": "light", "files-folder": s.files()})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Dir(preferences), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(s.files(), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(preferences, values, 0o644); err != nil {
		t.Fatal(err)
	}
	return s
}

// files is the folder that the program writes files to.
func (s *screen) files() string { return filepath.Join(s.home, "files") }

// environment is what every program on the screen runs in.
func (s *screen) environment() []string {
	return append(os.Environ(), "DISPLAY="+s.display, "HOME="+s.home, "XDG_CONFIG_HOME="+filepath.Join(s.home, ".config"),
		"XDG_CACHE_HOME="+filepath.Join(s.home, ".cache"), "LANG=en_US.UTF-8", "FYNE_SCALE=1", "DBUS_SESSION_BUS_ADDRESS=unix:path=/dev/null")
}

func (s *screen) start(program, path string) {
	s.t.Helper()
	s.program = exec.Command(program, path)
	s.program.Env = s.environment()
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

// makeTwin lays the window out in this process and finds the height of the menu: how
// much further down the real window shows the mark of the chosen step.
func (s *screen) makeTwin(path string) {
	s.t.Helper()
	app := test.NewTempApp(s.t)
	app.Preferences().SetString("files-folder", s.files()) // as in the real one, or the step is laid out otherwise
	s.twin = openedIn(s.t, app, path, s.t.TempDir())
	s.twin.window.SetPadded(true)
	s.twin.window.Resize(fyne.NewSize(screenWidth, screenHeight))
	inTwin := markTop(s.twin.window.Canvas().Capture())
	s.waitFor("the menu", func() bool {
		s.settle()
		s.menuHeight = float32(markTop(s.picture()) - inTwin)
		return inTwin >= 0 && s.menuHeight > 10 && s.menuHeight < 60
	})
	s.twin.window.Resize(fyne.NewSize(screenWidth, screenHeight-s.menuHeight))
}

// markTop returns the height at which the mark of the chosen step begins: the first
// pixel in the primary colour near the left edge, or −1 while there is none.
func markTop(picture image.Image) int {
	wr, wg, wb, _ := theme.Color(theme.ColorNamePrimary).RGBA()
	for y := range picture.Bounds().Dy() {
		for x := range 12 {
			r, g, b, _ := picture.At(x, y).RGBA()
			if r>>8 == wr>>8 && g>>8 == wg>>8 && b>>8 == wb>>8 {
				return y
			}
		}
	}
	return -1
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
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			if a.At(x, y) != b.At(x, y) {
				count++
			}
		}
	}
	return count
}

// object returns the first visible object of the twin for which wanted says yes.
func (s *screen) object(what string, wanted func(fyne.CanvasObject) bool) fyne.CanvasObject {
	s.t.Helper()
	for _, object := range test.LaidOutObjects(s.twin.window.Content()) {
		if wanted(object) {
			return object
		}
	}
	s.fail("no " + what + " in the window")
	return nil
}

// entry returns the middle of the entry that shows a text.
func (s *screen) entry(text string) fyne.Position {
	s.t.Helper()
	return s.at(s.object("entry with "+text, func(object fyne.CanvasObject) bool {
		_, isFocusable := object.(fyne.Focusable)
		value := reflect.Indirect(reflect.ValueOf(object))
		if !isFocusable || value.Kind() != reflect.Struct {
			return false
		}
		field := value.FieldByName("Text")
		return field.IsValid() && field.Kind() == reflect.String && field.String() == text
	}), 0.5, 0.5)
}

// slider returns the slider with a number, counted from 0 down the page.
func (s *screen) slider(number int) fyne.CanvasObject {
	s.t.Helper()
	return s.object("slider", func(object fyne.CanvasObject) bool {
		if !strings.HasSuffix(reflect.TypeOf(object).String(), ".slide") {
			return false
		}
		number--
		return number < 0
	})
}

// at returns the place on the screen that lies at shares of the width and height of
// an object of the twin.
func (s *screen) at(object fyne.CanvasObject, across, down float32) fyne.Position {
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(object)
	size := object.Size()
	return corner.AddXY(across*size.Width, down*size.Height+s.menuHeight)
}

// onBlank returns the place on the screen of a point of the first piece.
func (s *screen) onBlank(point geometry.Vec2) fyne.Position {
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.twin.blank)
	return corner.Add(s.twin.blank.PositionOf(0, point)).AddXY(0, s.menuHeight)
}

func (s *screen) click(at fyne.Position) {
	s.t.Helper()
	s.move(at)
	s.do("click", "1")
	s.settle()
}

func (s *screen) drag(from, to fyne.Position) {
	s.t.Helper()
	s.move(from)
	s.do("mousedown", "1")
	const steps = 8
	for step := 1; step <= steps; step++ {
		share := float32(step) / steps
		s.move(fyne.NewPos(from.X+share*(to.X-from.X), from.Y+share*(to.Y-from.Y)))
		time.Sleep(30 * time.Millisecond)
	}
	s.do("mouseup", "1")
	s.settle()
}

func (s *screen) move(to fyne.Position) {
	s.t.Helper()
	s.do("mousemove", strconv.Itoa(int(to.X+0.5)), strconv.Itoa(int(to.Y+0.5)))
	time.Sleep(80 * time.Millisecond)
}

func (s *screen) keys(keys string) {
	s.t.Helper()
	s.do("key", keys)
	s.settle()
}

func (s *screen) typed(text string) {
	s.t.Helper()
	s.do("type", "--delay", "30", text)
	s.settle()
}

// save saves by key and waits until the title says so.
func (s *screen) save() {
	s.t.Helper()
	s.keys("ctrl+s")
	s.waitForTitle("demo ")
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
