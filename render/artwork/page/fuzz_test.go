package page_test

import (
	"context"
	"errors"
	"testing"
	"time"

	"gussetwright/render/artwork/page"
)

// mostFuzzed keeps the fuzzer at small files, where it gets about.
const mostFuzzed = 16 << 10

// Whatever the file, reading ends with a message or a page, and what is read can be
// drawn, and placed in a file that is read again with the same size.
func FuzzRead(f *testing.F) {
	for _, data := range [][]byte{
		motifPage(90), layered("/OFF[11 0 R]"), manyPages(3), withPhoto(f, photo(f, 8, 8)),
		onePage("/MediaBox[0 0 100 100]/Group<</S/Transparency>>/Annots[4 0 R]/Resources<</XObject<</X 5 0 R>>>>", "/X Do",
			streamed("/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Resources 6 0 R", "/X Do"), "<</XObject<</X 5 0 R>>>>"),
	} {
		f.Add(data, 1)
	}
	f.Fuzz(func(t *testing.T, data []byte, number int) {
		if len(data) > mostFuzzed {
			t.Skip("a large file")
		}
		ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
		defer cancel()
		p, err := page.Read(ctx, data, number)
		if err != nil {
			return
		}
		if !(p.Size.X > 0 && p.Size.Y > 0) || p.Number != number || number > p.Pages {
			t.Fatalf("page %d of %d, %v mm", p.Number, p.Pages, p.Size)
		}
		if _, err := p.Render(ctx, 20, 30); err != nil && !errors.Is(err, context.DeadlineExceeded) {
			t.Fatal(err)
		}
		again, err := page.Read(ctx, placed(t, p), 1)
		if errors.Is(err, context.DeadlineExceeded) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if again.Size.Sub(p.Size).Length() > 0.001*p.Size.Length()+0.001 {
			t.Fatalf("placed, the page is %v mm and was %v", again.Size, p.Size)
		}
	})
}
