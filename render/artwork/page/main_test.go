package page_test

import (
	"log"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/render/artwork/page"
)

// The tests keep the compiled PDFium between runs, as the program does.
func TestMain(m *testing.M) {
	folder := ""
	if cache, err := os.UserCacheDir(); err == nil {
		folder = filepath.Join(cache, "gussetwright", "pdfium")
	}
	if err := page.Prepare(folder); err != nil {
		log.Fatal(err)
	}
	os.Exit(m.Run())
}
