package turntable_test

import (
	"bufio"
	"bytes"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"image"
	"image/png"
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry/geomtest"
)

// browser is a Chromium without a window, driven through a pair of pipes by the Chrome
// DevTools Protocol: messages in JSON, each ended by a zero byte.
type browser struct {
	t        *testing.T
	out      io.Writer
	in       *bufio.Reader
	number   int
	session  string
	problems []string // what the page complained about
	asked    []string // addresses that the page asked for
	loaded   bool
	bare     bool // scripts are off
}

// message is a call, its answer or an event.
type message struct {
	ID      int                       `json:"id,omitempty"`
	Session string                    `json:"sessionId,omitempty"`
	Method  string                    `json:"method,omitempty"`
	Params  any                       `json:"params,omitempty"`
	Result  json.RawMessage           `json:"result,omitempty"`
	Error   *struct{ Message string } `json:"error,omitempty"`
}

// shotsEnv names an environment variable: a folder for the pictures that the tests take,
// for those who want to look at them.
const shotsEnv = "GUSSETWRIGHT_SHOTS"

// patience is how long a test waits for the browser: software drawing on a busy
// machine is slow.
const patience = 4 * time.Minute

// openBrowser starts the browser, without a graphics card if there should be none.
func openBrowser(t *testing.T, drawing bool) *browser {
	t.Helper()
	home := t.TempDir()
	args := []string{
		"--headless=new", "--remote-debugging-pipe", "--no-sandbox", "--disable-dev-shm-usage", "--no-first-run",
		"--user-data-dir=" + home, "--disable-background-networking", "--disable-component-update", "--hide-scrollbars",
		"--force-color-profile=srgb",
	}
	if drawing {
		args = append(args, "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader")
	} else {
		args = append(args, "--disable-gpu", "--disable-3d-apis")
	}
	command := exec.Command(geomtest.Tool(t, "chromium"), append(args, "about:blank")...)
	command.Env = append(os.Environ(), "HOME="+home)
	theirIn, ourOut, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	ourIn, theirOut, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	command.ExtraFiles = []*os.File{theirIn, theirOut}
	if err := command.Start(); err != nil {
		t.Fatalf("start chromium: %v", err)
	}
	theirIn.Close()
	theirOut.Close()
	b := &browser{t: t, out: ourOut, in: bufio.NewReaderSize(ourIn, 1<<20)}
	clock := time.AfterFunc(patience, func() { ourIn.Close(); command.Process.Kill() })
	t.Cleanup(func() {
		clock.Stop()
		b.session = ""
		fmt.Fprintf(ourOut, `{"id":%d,"method":"Browser.close"}`+"\x00", b.number+1)
		ourOut.Close()
		command.Wait()
		ourIn.Close()
	})
	b.attach()
	return b
}

// attach takes hold of the first page.
func (b *browser) attach() {
	b.t.Helper()
	var made struct{ TargetID string }
	b.call("Target.createTarget", map[string]any{"url": "about:blank"}, &made)
	var held struct{ SessionID string }
	b.call("Target.attachToTarget", map[string]any{"targetId": made.TargetID, "flatten": true}, &held)
	b.session = held.SessionID
	for _, domain := range []string{"Page", "Runtime", "Log", "Network"} {
		b.call(domain+".enable", nil, nil)
	}
}

// call calls a method and waits for its answer. Events in between are noted.
func (b *browser) call(method string, params, result any) {
	b.t.Helper()
	b.number++
	if params == nil {
		params = struct{}{}
	}
	call, err := json.Marshal(message{ID: b.number, Session: b.session, Method: method, Params: params})
	if err != nil {
		b.t.Fatal(err)
	}
	if _, err := b.out.Write(append(call, 0)); err != nil {
		b.t.Fatalf("%s: %v", method, err)
	}
	for {
		answer := b.read(method)
		if answer.ID != b.number {
			continue
		}
		if answer.Error != nil {
			b.t.Fatalf("%s: %s", method, answer.Error.Message)
		}
		if result != nil {
			if err := json.Unmarshal(answer.Result, result); err != nil {
				b.t.Fatalf("%s: %v", method, err)
			}
		}
		return
	}
}

func (b *browser) read(waiting string) message {
	b.t.Helper()
	data, err := b.in.ReadBytes(0)
	if err != nil {
		b.t.Fatalf("%s: no answer from chromium: %v", waiting, err)
	}
	var event struct {
		message
		Params json.RawMessage `json:"params"`
	}
	if err := json.Unmarshal(bytes.TrimSuffix(data, []byte{0}), &event); err != nil {
		b.t.Fatalf("%s: %v", waiting, err)
	}
	switch event.Method {
	case "Runtime.consoleAPICalled", "Runtime.exceptionThrown", "Log.entryAdded":
		b.problems = append(b.problems, string(event.Params))
	case "Network.requestWillBeSent":
		var sent struct{ Request struct{ URL string } }
		if json.Unmarshal(event.Params, &sent) == nil {
			b.asked = append(b.asked, sent.Request.URL)
		}
	case "Page.loadEventFired":
		b.loaded = true
	}
	return event.message
}

// screen sets the size of the page, the pixels of the screen to each of it, and the
// colour scheme.
func (b *browser) screen(width, height int, density float64, scheme string) {
	b.t.Helper()
	b.call("Emulation.setDeviceMetricsOverride", map[string]any{
		"width": width, "height": height, "deviceScaleFactor": density, "mobile": false,
	}, nil)
	b.call("Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{
		{"name": "prefers-color-scheme", "value": scheme}, {"name": "prefers-reduced-motion", "value": "reduce"},
	}}, nil)
}

// open opens a page from a file, at a view such as "#view=back", and waits until it
// shows the bag or says why it does not.
func (b *browser) open(page []byte, view string) {
	b.t.Helper()
	b.load(page, view)
	b.evaluate(`new Promise((done) => {
		const look = () => document.documentElement.classList.contains("turning") || !document.getElementById("excuse").hidden
			? requestAnimationFrame(() => requestAnimationFrame(() => done(true))) : setTimeout(look, 20);
		look();
	})`, nil)
}

// load opens a page and waits until it is read.
func (b *browser) load(page []byte, view string) {
	b.t.Helper()
	path := filepath.Join(b.t.TempDir(), "page.html")
	if err := os.WriteFile(path, page, 0o600); err != nil {
		b.t.Fatal(err)
	}
	address := url.URL{Scheme: "file", Path: filepath.ToSlash(path)}
	b.loaded = false
	b.call("Page.navigate", map[string]any{"url": address.String() + view}, nil)
	for !b.loaded {
		b.read("open page")
	}
}

// look turns the open page to a view by its address.
func (b *browser) look(view string) {
	b.t.Helper()
	b.evaluate(`location.replace("#"); location.replace("`+view+`")`, nil)
	b.settle()
}

// evaluate evaluates an expression in the page, if need be once its promise is kept.
func (b *browser) evaluate(expression string, result any) {
	b.t.Helper()
	var answer struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails json.RawMessage
	}
	b.call("Runtime.evaluate", map[string]any{"expression": expression, "awaitPromise": true, "returnByValue": true}, &answer)
	if answer.ExceptionDetails != nil {
		b.t.Fatalf("%s: %s", expression, answer.ExceptionDetails)
	}
	if result != nil {
		if err := json.Unmarshal(answer.Result.Value, result); err != nil {
			b.t.Fatalf("%s: %v", expression, err)
		}
	}
}

// settle waits until the page has drawn what was asked of it.
func (b *browser) settle() {
	b.t.Helper()
	if b.bare {
		return // nothing moves, and nothing would answer
	}
	b.evaluate(`new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done))))`, nil)
}

// shot returns a picture of the page.
func (b *browser) shot() image.Image {
	b.t.Helper()
	b.settle()
	var taken struct{ Data string }
	b.call("Page.captureScreenshot", map[string]any{"format": "png"}, &taken)
	data, err := base64.StdEncoding.DecodeString(taken.Data)
	if err != nil {
		b.t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		b.t.Fatal(err)
	}
	if folder := os.Getenv(shotsEnv); folder != "" {
		name := strings.ReplaceAll(b.t.Name(), "/", "-") + fmt.Sprintf("-%d.png", b.number)
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			b.t.Fatal(err)
		}
	}
	return picture
}

// quiet fails the test if the page complained or asked for anything but itself and
// the data that it holds.
func (b *browser) quiet() {
	b.t.Helper()
	b.settle()
	for _, problem := range b.problems {
		b.t.Errorf("the page complains: %s", problem)
	}
	for _, address := range b.asked {
		if !strings.HasPrefix(address, "file://") && !strings.HasPrefix(address, "data:") && address != "about:blank" {
			b.t.Errorf("the page asks for %.100s", address)
		}
		if strings.HasPrefix(address, "file://") && !strings.HasPrefix(address[strings.LastIndex(address, "/"):], "/page.html") {
			b.t.Errorf("the page asks for the file %s", address)
		}
	}
}

// drag moves the mouse with its button down from one point to another, in steps.
func (b *browser) drag(fromX, fromY, toX, toY float64) {
	b.t.Helper()
	b.mouse("mousePressed", fromX, fromY, 1)
	const steps = 10
	for step := 1; step <= steps; step++ {
		share := float64(step) / steps
		b.mouse("mouseMoved", fromX+(toX-fromX)*share, fromY+(toY-fromY)*share, 1)
	}
	b.mouse("mouseReleased", toX, toY, 1)
}

func (b *browser) mouse(kind string, x, y float64, clicks int) {
	b.t.Helper()
	b.call("Input.dispatchMouseEvent", map[string]any{
		"type": kind, "x": x, "y": y, "button": "left", "buttons": 1, "clickCount": clicks,
	}, nil)
}

// touch lays fingers on the page at x and y of each, moves them or, without any, lifts
// them.
func (b *browser) touch(kind string, fingers ...[2]float64) {
	b.t.Helper()
	points := make([]map[string]any, len(fingers))
	for i, f := range fingers {
		points[i] = map[string]any{"x": f[0], "y": f[1], "id": i}
	}
	b.call("Input.dispatchTouchEvent", map[string]any{"type": kind, "touchPoints": points}, nil)
}

// key presses and lets go of a key.
func (b *browser) key(name string) {
	b.t.Helper()
	codes := map[string]int{"Tab": 9, "ArrowLeft": 37, "ArrowUp": 38, "ArrowRight": 39, "ArrowDown": 40, "Home": 36}
	for _, kind := range []string{"keyDown", "keyUp"} {
		b.call("Input.dispatchKeyEvent", map[string]any{"type": kind, "key": name, "code": name, "windowsVirtualKeyCode": codes[name]}, nil)
	}
}
