package help

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"
)

// library is a module that is part of the program, with its licence.
type library struct{ module, licence string }

// The licences of the libraries.
const (
	mit      = "MIT"
	bsd3     = "BSD 3-Clause"
	bsd2     = "BSD 2-Clause"
	apache   = "Apache 2.0"
	isc      = "ISC"
	freetype = "FreeType"
)

// libraries are the modules in the program on Linux; other systems take some fewer.
var libraries = []library{
	{"fyne.io/fyne/v2", bsd3},
	{"fyne.io/systray", apache},
	{"github.com/BurntSushi/toml", mit},
	{"github.com/andybalholm/brotli", mit},
	{"github.com/fredbi/uri", mit},
	{"github.com/fsnotify/fsnotify", bsd3},
	{"github.com/fyne-io/image", bsd3},
	{"github.com/fyne-io/oksvg", bsd3},
	{"github.com/go-gl/gl", mit},
	{"github.com/go-gl/glfw/v3.3/glfw", bsd3},
	{"github.com/go-text/render", bsd3},
	{"github.com/go-text/typesetting", bsd3},
	{"github.com/godbus/dbus/v5", bsd2},
	{"github.com/golang/freetype", freetype},
	{"github.com/google/uuid", bsd3},
	{"github.com/jeandeaual/go-locale", mit},
	{"github.com/jolestar/go-commons-pool/v2", apache},
	{"github.com/jsummers/gobmp", mit},
	{"github.com/klippa-app/go-pdfium", mit},
	{"github.com/nfnt/resize", isc},
	{"github.com/nicksnyder/go-i18n/v2", mit},
	{"github.com/pdfcpu/pdfcpu", apache},
	{"github.com/rymdport/portal", apache},
	{"github.com/srwiley/oksvg", bsd3},
	{"github.com/srwiley/rasterx", bsd3},
	{"github.com/tdewolff/font", mit},
	{"github.com/tdewolff/parse/v2", mit},
	{"github.com/tetratelabs/wazero", apache},
	{"github.com/yuin/goldmark", mit},
	{"golang.org/x/image", bsd3},
	{"golang.org/x/net", bsd3},
	{"golang.org/x/sys", bsd3},
	{"golang.org/x/text", bsd3},
}

// about says which program this is and what it is made of.
func about(version string) fyne.CanvasObject {
	box := container.NewVBox(
		words(fmt.Sprintf(lang.L("Gussetwright %s, free under the MIT licence. It comes without any warranty."), version)),
		words(lang.L("The lettering is the Go font family, under the BSD licence of the Go project. Portions of this software are based in part on the work of the FreeType Project (freetype.org).")),
		words(lang.L("It is built on these libraries, with thanks to their makers:")),
	)
	var modules, licences []string
	for _, one := range libraries {
		modules, licences = append(modules, one.module), append(licences, one.licence)
	}
	box.Add(container.NewHBox(
		widget.NewLabel(strings.Join(modules, "\n")), widget.NewLabel(strings.Join(licences, "\n"))))
	return box
}
