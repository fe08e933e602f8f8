package page

import (
	"bytes"
	"context"
	"errors"
	"strings"

	"github.com/klippa-app/go-pdfium"
	refused "github.com/klippa-app/go-pdfium/errors"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"gussetwright/geometry/phrase"
)

// ErrPassword tells that a file cannot be opened without its password.
var ErrPassword = phrase.Errorf("the file needs a password; open it in the program that made it and save it without one")

// noSecurity is the flag FPDF_REMOVE_SECURITY of PDFium's fpdf_save.h.
const noSecurity = 3

// extract is what PDFium made of a file: the page in a plain copy.
type extract struct {
	copied    []byte
	index     int  // of the page in the copy, from 0
	pages     int  // of the file
	whole     bool // the copy holds the whole file
	protected bool // its author wanted to restrict what may be done with it
}

// extractPage copies a page, counted from 1, out of a file. The copy holds the page
// alone, except where the page has layers: which of them are hidden is written for
// the whole file.
func extractPage(ctx context.Context, data []byte, number int) (extract, error) {
	e := extract{}
	if len(data) > mostBytes {
		return e, phrase.Errorf("the file has %d MB and may have %d; make the pictures in it smaller", len(data)>>20, mostBytes>>20)
	}
	if len(data) == 0 {
		return e, phrase.Errorf("the file is empty; save it again in the program that made it")
	}
	err := shared.run(ctx, readTime, func(p pdfium.Pdfium) error {
		file := newFile(data)
		defer file.leave()
		document, err := file.open(p)
		if err != nil {
			return err
		}
		defer p.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: document})
		return e.take(p, document, number)
	})
	return e, err
}

func (e *extract) take(p pdfium.Pdfium, document references.FPDF_DOCUMENT, number int) error {
	count, err := p.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: document})
	if err != nil {
		return damaged(err)
	}
	e.pages = count.PageCount
	switch {
	case e.pages < 1:
		return phrase.Errorf("the file has no page; save it again in the program that made it")
	case number < 1 || number > e.pages:
		return phrase.Errorf("there is no page %d, since the file has %d; choose one from 1 to %d", number, e.pages, e.pages)
	}
	security, err := p.FPDF_GetSecurityHandlerRevision(&requests.FPDF_GetSecurityHandlerRevision{Document: document})
	e.protected = err == nil && security.SecurityHandlerRevision >= 0

	e.copied, err = copyOne(p, document, number-1)
	if err == nil && !bytes.Contains(e.copied, []byte("/OCG")) && !bytes.Contains(e.copied, []byte("/OCMD")) {
		return nil
	}
	e.copied, err = save(p, document)
	e.index, e.whole = number-1, true
	return err
}

// copyOne returns a new file with nothing but one page.
func copyOne(p pdfium.Pdfium, from references.FPDF_DOCUMENT, index int) ([]byte, error) {
	made, err := p.FPDF_CreateNewDocument(&requests.FPDF_CreateNewDocument{})
	if err != nil {
		return nil, damaged(err)
	}
	defer p.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: made.Document})
	_, err = p.FPDF_ImportPagesByIndex(&requests.FPDF_ImportPagesByIndex{
		Source: from, Destination: made.Document, PageIndices: []int{index},
	})
	if err != nil {
		return nil, damaged(err)
	}
	return save(p, made.Document)
}

func save(p pdfium.Pdfium, document references.FPDF_DOCUMENT) ([]byte, error) {
	var copied limited
	_, err := p.FPDF_SaveAsCopy(&requests.FPDF_SaveAsCopy{Document: document, Flags: noSecurity, FileWriter: &copied})
	switch {
	case copied.full: // which PDFium tells in other words, if at all
		return nil, errCopied
	case err != nil:
		return nil, damaged(err)
	}
	return copied.Bytes(), nil
}

var errCopied = phrase.Errorf("a copy of the page takes more than %d MB; simplify the page, or turn it into a picture", mostCopied>>20)

// limited is a buffer that refuses to grow without end.
type limited struct {
	bytes.Buffer
	full bool
}

func (l *limited) Write(p []byte) (int, error) {
	if l.full = l.full || l.Len()+len(p) > mostCopied; l.full {
		return 0, errCopied
	}
	return l.Buffer.Write(p)
}

// damaged says in our words that the file could not be read.
func damaged(err error) error {
	cause := firstLine(err)
	if strings.Contains(cause.Error(), "wasm error") {
		return phrase.Errorf("it needs more than %d MB of memory, or the file is damaged; simplify the page, or turn it into a picture", memoryPages/16)
	}
	return phrase.Errorf("the file is damaged (%s); save it again in the program that made it", cause)
}

// firstLine shortens an error of PDFium: where that broke down, it goes on for many
// lines that tell a user nothing.
func firstLine(err error) error {
	if first, _, more := strings.Cut(err.Error(), "\n"); more {
		return errors.New(first)
	}
	return err
}

// file gives PDFium the bytes of a file piece by piece, so that a large one does not
// stand in its memory as well.
type file struct {
	bytes.Reader
	size int64
}

func newFile(data []byte) *file {
	f := &file{size: int64(len(data))}
	f.Reset(data)
	return f
}

// leave lets go of the bytes: PDFium's list of files outlives a call that was ended.
func (f *file) leave() { f.Reset(nil) }

func (f *file) open(p pdfium.Pdfium) (references.FPDF_DOCUMENT, error) {
	opened, err := p.OpenDocument(&requests.OpenDocument{FileReader: f, FileReaderSize: f.size})
	switch {
	case err == nil:
		return opened.Document, nil
	case errors.Is(err, refused.ErrPassword):
		return "", ErrPassword
	case errors.Is(err, refused.ErrSecurity):
		return "", phrase.Errorf("the file is encrypted in an unknown way; open it in the program that made it and save it without a password")
	case errors.Is(err, refused.ErrFormat), errors.Is(err, refused.ErrFile):
		return "", phrase.Errorf("it is no PDF file, or it was cut off; save it again in the program that made it")
	}
	return "", damaged(err)
}
