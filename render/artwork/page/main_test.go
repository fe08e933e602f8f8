package page_test

import (
	"os"
	"path/filepath"
	"testing"

	"gussetwright/render/artwork/page"
)

// The tests keep the compiled PDFium between runs, as the program does.
func TestMain(m *testing.M) {
	if cache, err := os.UserCacheDir(); err == nil {
		page.KeepIn(filepath.Join(cache, "gussetwright", "pdfium"))
	}
	os.Exit(m.Run())
}
