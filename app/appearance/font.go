package appearance

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gobolditalic"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/gomonobold"
	"golang.org/x/image/font/gofont/goregular"
)

// The lettering of the window is that of the drawings, the Go fonts.
var (
	regular    = fyne.NewStaticResource("Go-Regular.ttf", goregular.TTF)
	bold       = fyne.NewStaticResource("Go-Bold.ttf", gobold.TTF)
	italic     = fyne.NewStaticResource("Go-Italic.ttf", goitalic.TTF)
	boldItalic = fyne.NewStaticResource("Go-Bold-Italic.ttf", gobolditalic.TTF)
	mono       = fyne.NewStaticResource("Go-Mono.ttf", gomono.TTF)
	monoBold   = fyne.NewStaticResource("Go-Mono-Bold.ttf", gomonobold.TTF)
)

// Font returns the face for a style of text.
func (l *look) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol:
		return theme.DefaultTheme().Font(style)
	case style.Monospace && style.Bold:
		return monoBold
	case style.Monospace:
		return mono
	case style.Bold && style.Italic:
		return boldItalic
	case style.Bold:
		return bold
	case style.Italic:
		return italic
	}
	return regular
}
