package page

import (
	"context"
	"image"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"gussetwright/geometry/phrase"
)

// Render draws the placed area into a picture of width × height pixels, on
// transparent ground, with colours for a screen (sRGB). Stretching it is up to the
// caller: the proportions need not be those of Size. Where ctx ends, its error is
// returned.
func (p *Page) Render(ctx context.Context, width, height int) (*image.RGBA, error) {
	if width < 1 || height < 1 || width > mostPixels/height {
		return nil, phrase.Errorf("draw the PDF page in %d × %d pixels: choose at least 1 × 1 and at most %d megapixels", width, height, mostPixels>>20)
	}
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	err := withPage(ctx, drawTime, onePage(p.form), func(pdfium pdfium.Pdfium, page requests.Page) error {
		return paint(pdfium, page, picture)
	})
	if err != nil {
		return nil, phrase.Errorf("draw the PDF page in %d × %d pixels: %s", width, height, err)
	}
	return picture, nil
}

// paint draws the page over the whole picture.
func paint(p pdfium.Pdfium, page requests.Page, picture *image.RGBA) error {
	size := picture.Bounds().Size()
	made, err := p.FPDFBitmap_CreateEx(&requests.FPDFBitmap_CreateEx{
		Width: size.X, Height: size.Y, Format: enums.FPDF_BITMAP_FORMAT_BGRA, Pointer: uint64(0),
	})
	if err != nil {
		return noMemory(err)
	}
	_, err = p.FPDFBitmap_FillRect(&requests.FPDFBitmap_FillRect{Bitmap: made.Bitmap, Width: size.X, Height: size.Y})
	if err != nil {
		return noMemory(err)
	}
	_, err = p.FPDF_RenderPageBitmap(&requests.FPDF_RenderPageBitmap{
		Bitmap: made.Bitmap, Page: page, SizeX: size.X, SizeY: size.Y,
		Flags: enums.FPDF_RENDER_FLAG_REVERSE_BYTE_ORDER | enums.FPDF_RENDER_FLAG_RENDER_LIMITEDIMAGECACHE,
	})
	if err != nil {
		return damaged(err)
	}
	return fetch(p, made.Bitmap, picture)
}

func noMemory(err error) error {
	return phrase.Errorf("the picture is too large for the memory (%s); choose fewer pixels", firstLine(err))
}

// fetch takes the picture out of PDFium, whose colours are not multiplied by alpha.
func fetch(p pdfium.Pdfium, bitmap references.FPDF_BITMAP, picture *image.RGBA) error {
	stride, err := p.FPDFBitmap_GetStride(&requests.FPDFBitmap_GetStride{Bitmap: bitmap})
	if err != nil {
		return noMemory(err)
	}
	buffer, err := p.FPDFBitmap_GetBuffer(&requests.FPDFBitmap_GetBuffer{Bitmap: bitmap})
	if err != nil {
		return noMemory(err)
	}
	size := picture.Bounds().Size()
	if stride.Stride < 4*size.X || len(buffer.Buffer) < stride.Stride*size.Y {
		return noMemory(phrase.Errorf("the bitmap is incomplete"))
	}
	for y := range size.Y {
		multiply(picture.Pix[y*picture.Stride:][:4*size.X], buffer.Buffer[y*stride.Stride:][:4*size.X])
	}
	return nil
}

// multiply writes pixels with their colours multiplied by alpha.
func multiply(to, from []byte) {
	copy(to, from)
	for i := 0; i+3 < len(to); i += 4 {
		alpha := uint32(to[i+3])
		if alpha == 255 {
			continue
		}
		for j := i; j < i+3; j++ {
			to[j] = byte((uint32(to[j])*alpha + 127) / 255)
		}
	}
}
