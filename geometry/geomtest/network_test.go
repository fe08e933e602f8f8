package geomtest_test

import (
	"go/ast"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// The program uses no network and starts no other program but the one that shows a
// folder. The tests here look at what is imported, called and linked; others run
// gwbatch and the window where there is no network at all.

// outward are the packages that reach out of the program.
var outward = []string{"net", "net/http", "net/rpc", "net/smtp", "net/textproto", "crypto/tls", "os/exec"}

// outwardImporters are the packages of others that import one of them, each with the
// reason why nothing comes of it.
var outwardImporters = map[string]string{
	"fyne.io/fyne/v2 net/http":                         "LoadResourceFromURLString fetches; we never call it",
	"fyne.io/fyne/v2/internal/repository net/http":     "files at http addresses; we open none",
	"fyne.io/fyne/v2/app os/exec":                      "OpenURL shows a folder or a file; also the notices of the system, which we do not send",
	"fyne.io/fyne/v2/dialog os/exec":                   "asks xdg-user-dir for the usual folders",
	"github.com/jeandeaual/go-locale os/exec":          "asks macOS for the language of the user",
	"github.com/godbus/dbus/v5 net":                    "a socket file to the desktop on this machine, for light and dark",
	"github.com/godbus/dbus/v5 os/exec":                "starts the message bus of the desktop where there is none",
	"github.com/andybalholm/brotli net/http":           "packs what a server sends; there is none",
	"github.com/google/uuid net":                       "numbers from the hardware address; go-pdfium numbers its instances at random",
	"golang.org/x/sys/windows net":                     "has the error codes of Windows",
	"github.com/tetratelabs/wazero net":                "sockets for the sandbox; ours is given none",
	"github.com/tetratelabs/wazero/internal/sock net":  "the same",
	"github.com/tetratelabs/wazero/internal/sys net":   "the same",
	"github.com/tetratelabs/wazero/internal/sysfs net": "the same",
}

func TestNoOtherDependencyReachesOut(t *testing.T) {
	const format = `{{if not .Standard}}{{.ImportPath}} {{join .Imports " "}}{{end}}`
	seen := map[string]bool{}
	for _, system := range []string{"linux", "windows", "darwin"} {
		command := exec.Command("go", "list", "-deps", "-f", format, "./cmd/gussetwright", "./cmd/gwbatch")
		command.Dir = geomtest.Root(t)
		command.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=1")
		output, err := command.Output()
		if err != nil {
			t.Fatalf("list the dependencies for %s: %v", system, err)
		}
		for line := range strings.Lines(string(output)) {
			words := strings.Fields(line)
			if len(words) == 0 {
				continue
			}
			for _, imported := range words[1:] {
				if slices.Contains(outward, imported) {
					seen[words[0]+" "+imported] = true
				}
			}
		}
	}
	for _, pair := range slices.Sorted(maps.Keys(seen)) {
		if outwardImporters[pair] == "" {
			t.Errorf("new: %s; use something else, or say in outwardImporters why nothing comes of it", pair)
		}
	}
	for pair := range outwardImporters {
		if !seen[pair] {
			t.Errorf("%s is no dependency any more; take it off the list", pair)
		}
	}
}

// reachingOut are names of functions, in whatever package, that would fetch something,
// listen or start a program. The keys of the second list are files that may do so.
var (
	reachingOut = []string{
		"LoadResourceFromURL", "LoadResourceFromURLString", "NewImageFromURI", "LoadResourceFromURI", "ParseURI", "NewURI",
		"NewHyperlink", "NewRichTextFromMarkdown", "SendNotification", "OpenURL", "Socket", "Connect", "StartProcess", "ForkExec",
	}
	mayReachOut = map[string]string{
		filepath.FromSlash("app/places/open.go") + " OpenURL": "shows files that were written, or their folder",
	}
)

func TestOurSourceDoesNotReachOut(t *testing.T) {
	files := 0
	for _, file := range sourceFiles(t) {
		folder := filepath.ToSlash(filepath.Dir(file))
		if folder == "geometry/geomtest" || folder == "cmd/task" || folder == "cmd/demo" {
			continue // they are no part of the program
		}
		files++
		parsed := parseSource(t, file)
		for _, spec := range parsed.Imports {
			path, _ := strconv.Unquote(spec.Path.Value)
			if slices.Contains(outward, path) || strings.HasPrefix(path, "golang.org/x/net/") {
				t.Errorf("%s imports %s", file, path)
			}
		}
		ast.Inspect(parsed, func(node ast.Node) bool {
			selector, ok := node.(*ast.SelectorExpr)
			if ok && slices.Contains(reachingOut, selector.Sel.Name) && mayReachOut[file+" "+selector.Sel.Name] == "" {
				t.Errorf("%s uses %s", file, selector.Sel.Name)
			}
			return true
		})
	}
	if files < 200 {
		t.Errorf("only %d files looked at", files)
	}
}

// linkedNever must not be in gwbatch: what a client, a server or the start of another
// program cannot do without. What is left of package net, such as Dialer.DialContext, is
// kept by the initialization of net/http and by the sockets of wazero.
var linkedNever = []string{
	"net/http.(*Client).do", "net/http.(*Transport).roundTrip", "net/http.(*Server).Serve", "net/http.ReadResponse",
	"crypto/tls.(*Conn).Handshake", "crypto/tls.(*Conn).clientHandshake", "net.Dial", "net.LookupHost",
	"net/smtp.Dial", "net/rpc.Dial", "os.StartProcess", "os/exec.(*Cmd).Start",
}

func TestBatchLinksNoClientAndNoServer(t *testing.T) {
	program := filepath.Join(t.TempDir(), "gwbatch")
	build := exec.Command("go", "build", "-o", program, "./cmd/gwbatch")
	build.Dir = geomtest.Root(t)
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if output, err := build.CombinedOutput(); err != nil {
		t.Fatalf("build gwbatch: %v\n%s", err, output)
	}
	output, err := exec.Command("go", "tool", "nm", program).Output()
	if err != nil {
		t.Fatal(err)
	}
	symbols := map[string]bool{}
	for line := range strings.Lines(string(output)) {
		words := strings.Fields(line)
		symbols[words[len(words)-1]] = true
	}
	if !symbols["main.main"] || !symbols["gussetwright/app/batch.Run"] {
		t.Fatalf("%d symbols do not hold main.main and batch.Run", len(symbols))
	}
	for _, symbol := range linkedNever {
		if symbols[symbol] {
			t.Errorf("%s is linked in", symbol)
		}
	}
}
