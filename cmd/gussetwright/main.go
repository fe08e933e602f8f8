//go:build cgo

// Gussetwright is the window in which paper carrier bags are designed. It takes the
// path of a project to open.
package main

import (
	"fmt"
	"os"
	"runtime"
	"runtime/debug"

	"fyne.io/fyne/v2/app"

	"gussetwright/app/appearance"
	"gussetwright/app/cache"
	"gussetwright/app/document"
	"gussetwright/app/session"
	"gussetwright/app/settings"
	"gussetwright/app/window"
	"gussetwright/app/words"
	"gussetwright/render/artwork/page"
)

func main() {
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		fmt.Fprintln(os.Stderr, "gussetwright: there is no display to open a window on; start it on a desktop, or use gwbatch")
		os.Exit(2)
	}
	// Pictures come and go by the megabyte; collecting them early costs little and keeps
	// the program small.
	debug.SetGCPercent(50)
	page.KeepIn(cache.Folder("pdfium"))
	program := app.NewWithID("net.gussetwright.app")
	set := settings.New(program.Preferences())
	if err := words.Load(set.Language()); err != nil {
		fmt.Fprintln(os.Stderr, "gussetwright:", err)
	}
	appearance.Wear(program, set)
	program.SetIcon(appearance.ProgramIcon())
	doc := document.New()
	main := window.New(program, set, doc, session.New(doc, session.Options{Recent: set}))
	path := ""
	if len(os.Args) > 1 {
		path = os.Args[1]
	}
	main.Show(path)
	program.Run()
}
