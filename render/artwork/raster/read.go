package raster

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// file is a picture file whose header was read.
type file interface {
	head() *header
	// decode reads the pixels.
	decode(source *source) (samples, error)
	// passed returns the data of a PDF image object as they stand in the file, with
	// how they are coded, or nil where PDF does not know the coding.
	passed() (coding object.Dict, data []byte)
}

// kinds lists what can be read, by how a file begins.
var kinds = []struct {
	name  string
	match func(data []byte) bool
	open  func(data []byte) (file, error)
}{
	{"PNG", begins("\x89PNG\r\n\x1a\n"), openPNG},
	{"JPEG", begins("\xff\xd8\xff"), openJPEG},
	{"TIFF", func(data []byte) bool { return begins("II*\x00")(data) || begins("MM\x00*")(data) }, openTIFF},
	{"WebP", func(data []byte) bool { return begins("RIFF")(data) && begins("WEBP")(data[min(8, len(data)):]) }, openWebP},
}

func begins(text string) func(data []byte) bool {
	return func(data []byte) bool { return bytes.HasPrefix(data, []byte(text)) }
}

// Read reads a picture and makes it ready for the screen. The content decides what
// kind of file it is, not its name. The picture keeps data, which must not change
// any more.
//
// Errors say what is wrong and what to do about it; ctx ends the work early.
func Read(ctx context.Context, data []byte) (*Picture, error) {
	return read(ctx, data, standard)
}

func read(ctx context.Context, data []byte, most limits) (*Picture, error) {
	for _, kind := range kinds {
		if kind.match(data) {
			return readKind(ctx, data, most, kind.name, kind.open)
		}
	}
	return nil, unknown(data)
}

func readKind(ctx context.Context, data []byte, most limits, format string, open func([]byte) (file, error)) (p *Picture, err error) {
	defer contain(format, &err)
	f, err := open(data)
	if err != nil {
		return nil, damaged(format, err)
	}
	if err := most.check(f.head()); err != nil {
		return nil, err
	}
	p = newPicture(f, data)
	pixels, err := p.decode(ctx)
	if err != nil {
		return nil, err
	}
	if err := p.look(ctx, pixels); err != nil {
		return nil, err
	}
	return p, nil
}

// decode reads the pixels and tells apart why they cannot be read.
func (p *Picture) decode(ctx context.Context) (samples, error) {
	pixels, err := p.file.decode(&source{ctx, bytes.NewReader(p.data)})
	if stop := stopped(ctx, p.Format); stop != nil {
		return samples{}, stop
	}
	if err != nil {
		return samples{}, damaged(p.Format, err)
	}
	return pixels, nil
}

// stopped returns the error of a ctx that has ended, or nil.
func stopped(ctx context.Context, format string) error {
	if err := ctx.Err(); err != nil {
		return phrase.Errorf("reading the %s picture was stopped: %s", format, err)
	}
	return nil
}

// contain turns a panic into an error. Decoders of other makers index by numbers
// out of the file; one that they forgot to check must not take the bag with it.
func contain(format string, err *error) {
	if fault := recover(); fault != nil {
		*err = damaged(format, phrase.Errorf("its reader failed: %v", fault))
	}
}

// refusal is an error that says already what to do.
type refusal struct{ phrase.Phrase }

func (r refusal) Error() string { return r.String() }

// refuse returns an error with a message of its own for a user.
func refuse(format string, args ...any) error { return refusal{phrase.New(format, args...)} }

// damaged words an error of a decoder for a user.
func damaged(format string, err error) error {
	var own refusal
	switch {
	case errors.As(err, &own):
		return err
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return phrase.Errorf("the %s file is cut off before its end (%s): copy it again, or save it again as %[1]s", format, err)
	}
	return phrase.Errorf("the %s file is damaged, or of a kind that cannot be read (%s): save it again as PNG", format, err)
}

// source is the file as decoders read it. Decoders cannot be told to stop; they do
// once nothing more can be read.
type source struct {
	ctx  context.Context
	data *bytes.Reader
}

func (s *source) Read(b []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.data.Read(b)
}

func (s *source) ReadAt(b []byte, at int64) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.data.ReadAt(b, at)
}

// strangers are other kinds of files that people take for pictures, by how they
// begin; a ? stands for any byte.
var strangers = []struct{ begin, name string }{
	{"GIF8", "GIF"},
	{"BM", "BMP"},
	{"8BPS", "PSD"},
	{"%PDF", "PDF"},
	{"%!PS", "PostScript"},
	{"<svg", "SVG"},
	{"<?xml", "XML"},
	{"????ftyp", "HEIC/AVIF"},
	{"II+\x00", "BigTIFF"},
	{"MM\x00+", "BigTIFF"},
	{"\x00\x00\x00\x0cjP  ", "JPEG 2000"},
	{"\xff\x4f\xff\x51", "JPEG 2000"},
	{"\xff\x0a", "JPEG XL"},
	{"PK\x03\x04", "ZIP"},
}

// unknown says what a file is that is none of kinds.
func unknown(data []byte) error {
	if len(data) == 0 {
		return refuse("the file is empty: save the picture again")
	}
	for _, stranger := range strangers {
		if len(data) < len(stranger.begin) {
			continue
		}
		if strings.HasSuffix(stranger.begin, string(data[strings.Count(stranger.begin, "?"):len(stranger.begin)])) {
			return refuse("the content is a %s file, no PNG, JPEG, TIFF or WebP: save the picture as one of these", stranger.name)
		}
	}
	return refuse("the content is no PNG, JPEG, TIFF or WebP: save the picture as one of these")
}
