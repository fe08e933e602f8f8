package places

import (
	"net/url"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
)

// Open has a file or a folder shown by the program that the desktop has for it.
func Open(path string) error { return fyne.CurrentApp().OpenURL(pageOf(path)) }

// pageOf returns the address of a file or a folder. That of a Windows drive begins with a
// slash as well (RFC 8089, appendix E.2).
func pageOf(path string) *url.URL {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path
	}
	return &url.URL{Scheme: "file", Path: path}
}
