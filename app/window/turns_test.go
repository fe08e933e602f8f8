package window

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// turns is the driver of tests, except that what other goroutines hand to that of the
// window waits for its turn, as on a screen. The driver of the toolkit does it at once,
// in the middle of what the test does.
type turns struct {
	fyne.Driver
	waiting chan func()
}

func (d *turns) DoFromGoroutine(do func(), wait bool) {
	if !wait {
		d.waiting <- do
		return
	}
	done := make(chan struct{})
	d.waiting <- func() {
		do()
		close(done)
	}
	<-done
}

type turnApp struct {
	fyne.App
	driver *turns
}

func (a *turnApp) Driver() fyne.Driver { return a.driver }

// newApp returns an app for a test whose goroutine is that of the window.
func newApp(t testing.TB) fyne.App {
	t.Helper()
	plain := test.NewTempApp(t)
	app := &turnApp{plain, &turns{plain.Driver(), make(chan func(), 10_000)}}
	fyne.SetCurrentApp(app)
	return app
}

// catchUp does what other goroutines handed over until now.
func catchUp() {
	d, is := fyne.CurrentApp().Driver().(*turns)
	for is {
		select {
		case do := <-d.waiting:
			do()
		default:
			return
		}
	}
}
