//go:build cgo

// Gussetwright is the window in which paper carrier bags are designed. It takes the
// path of a project to open.
package main

import (
	"fmt"
	"os"
	"runtime"
	"runtime/debug"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/appearance"
	"gussetwright/app/cache"
	"gussetwright/app/document"
	"gussetwright/app/pulse"
	"gussetwright/app/release"
	"gussetwright/app/session"
	"gussetwright/app/settings"
	"gussetwright/app/window"
	"gussetwright/app/words"
	"gussetwright/render/artwork/page"
)

// identity is the name by which the system and the user's settings know the program.
const identity = "net.gussetwright.app"

func main() {
	if answer(os.Stdout, os.Args[1:]) {
		return
	}
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		fmt.Fprintln(os.Stderr, "gussetwright: there is no display to open a window on; start it on a desktop, or use gwbatch")
		os.Exit(2)
	}
	// Pictures come and go by the megabyte; collecting them early costs little and keeps
	// the program small.
	debug.SetGCPercent(50)
	page.KeepIn(cache.Folder("pdfium"))
	if err := os.Setenv("RESOURCE_NAME", "gussetwright"); err != nil { // by it a Linux desktop finds the menu entry of the window
		fmt.Fprintln(os.Stderr, "gussetwright:", err)
	}
	app.SetMetadata(fyne.AppMetadata{
		ID: identity, Name: "Gussetwright", Version: release.Version(),
		// All of the window is used on its goroutine. Having the toolkit check that took
		// half of the time in which another step or another text size is shown.
		Migrations: map[string]bool{"fyneDo": true},
	})
	program := app.NewWithID(identity)
	set := settings.New(program.Preferences())
	set.SetUsualUnit(settings.UsualUnit(lang.SystemLocale().String(), os.Getenv))
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
	if err := pulse.Start(os.Getenv(pulse.Variable), eachFrame); err != nil {
		fmt.Fprintln(os.Stderr, "gussetwright:", err)
	}
	program.Run()
}

// eachFrame does something at every frame of the window from now on: animations move then.
// This one draws nothing.
func eachFrame(do func()) {
	fyne.Do(func() {
		forever := fyne.NewAnimation(time.Hour, func(float32) { do() })
		forever.RepeatCount = fyne.AnimationRepeatForever
		forever.Start()
	})
}
