package page_test

import (
	"bytes"
	"compress/zlib"
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"gussetwright/render/artwork/page"
)

// manyPages writes a file of so many pages, the number of each as its width.
func manyPages(count int) []byte {
	objects := []string{"<</Type/Catalog/Pages 2 0 R>>", ""}
	var children strings.Builder
	for i := range count {
		objects = append(objects, fmt.Sprintf("<</Type/Page/Parent 2 0 R/MediaBox[0 0 %d 100]/Resources<<>>>>", i+101))
		fmt.Fprintf(&children, "%d 0 R ", i+3)
	}
	objects[1] = fmt.Sprintf("<</Type/Pages/Count %d/Kids[%s]>>", count, children.String())
	return handmade(objects...)
}

func TestManyPages(t *testing.T) {
	data := manyPages(10_000)
	p := read(t, data, 9_999)
	if want := (9_999 + 100) * 25.4 / 72; p.Pages != 10_000 || p.Size.X < want-0.01 || p.Size.X > want+0.01 {
		t.Errorf("page of %v mm of %d, want %.2f mm of 10000", p.Size, p.Pages, want)
	}
	for _, number := range []int{-1, 0, 10_001} {
		_, err := page.Read(context.Background(), data, number)
		if err == nil || !strings.Contains(err.Error(), "1 to 10000") {
			t.Errorf("page %d: %v, want an error that names the pages there are", number, err)
		}
	}
}

// bomb packs so many bytes of spaces, twice where it is to be worse.
func bomb(t testing.TB, size int, twice bool) string {
	var out bytes.Buffer
	pack, _ := zlib.NewWriterLevel(&out, zlib.BestSpeed)
	block := bytes.Repeat([]byte(" "), 1<<20)
	for range size >> 20 {
		pack.Write(block)
	}
	if err := pack.Close(); err != nil {
		t.Fatal(err)
	}
	if !twice {
		return out.String()
	}
	var again bytes.Buffer
	pack = zlib.NewWriter(&again)
	pack.Write(out.Bytes())
	pack.Close()
	return again.String()
}

// What cannot be used is refused with a message that says what to do.
func TestRefused(t *testing.T) {
	good := motifPage(0)
	simple := "/MediaBox[0 0 100 100]/Resources<<>>"
	filled := "0 0 9 9 re f"
	tests := []struct {
		name string
		data []byte
		want string
	}{
		{"nothing", nil, "is empty"},
		{"no PDF", []byte("GIF89a, or something else altogether"), "no PDF file"},
		{"a header alone", []byte("%PDF-1.7\n"), "no PDF file"},
		{"cut off early", good[:len(good)/8], "save it again"},
		{"cut off late", good[:bytes.LastIndex(good, []byte("xref\n0"))], "cut off"},
		{"a password", encrypted(t, good, "secret"), "needs a password"},
		{"no pages", handmade("<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 0/Kids[]>>"), "save it again"},
		{"a page tree that goes round", handmade("<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 1/Kids[2 0 R]>>"), "save it again"},
		{"no size", onePage("/MediaBox[0 0 0 0]/Resources<<>>", filled), "give the page a size"},
		{"a size of letters", onePage("/MediaBox[0 0 nan inf]/Resources<<>>", filled), "give the page a size"},
		{"a hair", onePage("/MediaBox[0 0 1 500]/Resources<<>>", filled), "give the page a size"},
		{"a page of 7 m", onePage("/MediaBox[0 0 20000 100]/Resources<<>>", filled), "make the page smaller"},
		{"a unit of 26 m", onePage("/MediaBox[0 0 100 100]/UserUnit 75000/Resources<<>>", filled), "make the page smaller"},
		{"operators that unpack to 1 GB", handmade("<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 1/Kids[3 0 R]>>",
			"<</Type/Page/Parent 2 0 R/Contents 4 0 R"+simple+">>", streamed("/Filter/FlateDecode", bomb(t, 1<<30, false))), "unpack to more"},
		{"packed twice", handmade("<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 1/Kids[3 0 R]>>",
			"<</Type/Page/Parent 2 0 R/Contents 4 0 R"+simple+">>", streamed("/Filter[/FlateDecode/FlateDecode]", bomb(t, 1<<28, true))), "unpack to more"},
		{"in a form", onePage("/MediaBox[0 0 100 100]/Resources<</XObject<</X 5 0 R>>>>", "/X Do",
			streamed("/Type/XObject/Subtype/Form/BBox[0 0 9 9]/Filter/FlateDecode", bomb(t, 1<<28, false))), "unpack to more"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := page.Read(context.Background(), test.data, 1)
			if err == nil || !strings.Contains(err.Error(), test.want) || !strings.HasPrefix(err.Error(), "read page 1") {
				t.Errorf("%v, want an error with %q", err, test.want)
			} else {
				t.Log(err)
			}
			if errors.Is(err, page.ErrPassword) != strings.Contains(test.want, "password") {
				t.Errorf("%v is told by ErrPassword the wrong way", err)
			}
		})
	}
}

// What can be used in spite of all is drawn, and the form is a file that other
// readers open.
func TestUsable(t *testing.T) {
	good := motifPage(0)
	box := "/MediaBox[0 0 100 100]"
	tests := []struct {
		name string
		data []byte
	}{
		{"a table of objects that is wrong", bytes.Replace(good, []byte("xref\n0"), []byte("xrof\n9"), 1)},
		{"an owner's password", encrypted(t, good, "")},
		{"a form that contains itself", onePage(box+"/Resources<</XObject<</X 5 0 R>>>>", "1 0 0 rg 0 0 50 50 re f /X Do",
			streamed("/Type/XObject/Subtype/Form/BBox[0 0 100 100]/Resources<</XObject<</X 5 0 R>>>>", "0 0 9 9 re f /X Do"))},
		{"resources that contain themselves", onePage(box+"/Resources 5 0 R", "1 0 0 rg 0 0 50 50 re f", "<</XObject 5 0 R/A 6 0 R>>", "[5 0 R 6 0 R 3 0 R 1 0 R]")},
		{"values deep in each other", onePage(box+"/Resources<</A "+strings.Repeat("[", 50_000)+strings.Repeat("]", 50_000)+">>", "1 0 0 rg 0 0 50 50 re f")},
		{"nothing on it", handmade("<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Count 1/Kids[3 0 R]>>", "<</Type/Page/Parent 2 0 R"+box+">>")},
		{"a Q too many", onePage(box+"/Resources<<>>", "Q Q 1 0 0 rg 0 0 50 50 re f Q q q")},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := read(t, test.data, 1)
			width, height := 300, int(300*p.Size.Y/p.Size.X+0.5)
			ours := render(t, p, width, height)
			alike(t, "placed, by pdftoppm", byPoppler(t, placed(t, p), 1, width, height), ours, 4)
		})
	}
}

// A picture of 100 000 × 100 000 pixels is left white by PDFium, and the rest is drawn.
// Other readers spend minutes on it, so none is asked.
func TestHugePicture(t *testing.T) {
	data := onePage("/MediaBox[0 0 100 100]/Resources<</XObject<</X 5 0 R>>>>", "1 0 0 rg 0 0 50 50 re f q 9 0 0 9 60 60 cm /X Do Q",
		streamed("/Type/XObject/Subtype/Image/Width 100000/Height 100000/BitsPerComponent 8/ColorSpace/DeviceRGB/Filter/FlateDecode", bomb(t, 64<<20, false)))
	p := read(t, data, 1)
	if got := render(t, p, 100, 100).RGBAAt(20, 80); got.R != 255 || got.A != 255 {
		t.Errorf("beside the picture %v, want red", got)
	}
	if len(p.Images) != 1 || p.Images[0].Width != 100_000 {
		t.Errorf("pictures %v", p.Images)
	}
}

// Scripts, actions and files beside the page stay behind.
func TestLeftBehind(t *testing.T) {
	data := handmade("<</Type/Catalog/Pages 2 0 R/OpenAction<</S/JavaScript/JS(app.alert\\(1\\))>>/Names<</JavaScript<</Names[(a)6 0 R]>>>>>>",
		"<</Type/Pages/Count 1/Kids[3 0 R]>>",
		"<</Type/Page/Parent 2 0 R/MediaBox[0 0 100 100]/Contents 4 0 R/AA<</O 6 0 R>>/Annots[5 0 R]/Resources<</XObject<</X 7 0 R>>>>>>",
		streamed("", "/X Do"), "<</Type/Annot/Subtype/Link/Rect[0 0 99 99]/A<</S/Launch/F(calculator)>>>>", "<</S/JavaScript/JS(app.alert\\(2\\))>>",
		streamed("/Type/XObject/Subtype/Form/BBox[0 0 100 100]/F(other.pdf)/Ref<</F(other.pdf)/Page 1>>/PieceInfo<</Program<</Private(secret)>>>>", "0 0 50 50 re f"))
	p := read(t, data, 1)
	out := placed(t, p)
	for _, left := range []string{"JavaScript", "Launch", "Annot", "Ref", "PieceInfo", "/F ", "6F74686572"} {
		if bytes.Contains(out, []byte(left)) {
			t.Errorf("%q came along", left)
		}
	}
	if render(t, p, 100, 100).RGBAAt(20, 80).A != 255 {
		t.Error("the form was not drawn")
	}
}

// endless is a page that takes PDFium a very long time: forms that draw forms.
func endless() []byte {
	more := []string{}
	for i := range 12 {
		next := fmt.Sprintf("%d 0 R", 6+i)
		more = append(more, streamed("/Type/XObject/Subtype/Form/BBox[0 0 100 100]/Resources<</XObject<</X "+next+">>>>", strings.Repeat("/X Do ", 30)))
	}
	more = append(more, streamed("/Type/XObject/Subtype/Form/BBox[0 0 100 100]", "0 0 50 50 re f"))
	return onePage("/MediaBox[0 0 100 100]/Resources<</XObject<</X 5 0 R>>>>", "/X Do", more...)
}

// A call ends when it is asked to, and the next one works.
func TestEnded(t *testing.T) {
	good := read(t, motifPage(0), 1)
	ctx, cancel := context.WithTimeout(context.Background(), 300*time.Millisecond)
	defer cancel()
	if _, err := page.Read(ctx, endless(), 1); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("%v, want the error of the deadline", err)
	}
	if _, err := good.Render(ctx, 100, 100); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("%v, want the error of the deadline", err)
	}
	if _, err := good.Form(ctx); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("%v, want the error of the deadline", err)
	}
	read(t, motifPage(90), 1)
	render(t, good, 100, 100)
}

func TestRenderLimits(t *testing.T) {
	p := read(t, motifPage(0), 1)
	for _, size := range [][2]int{{0, 10}, {10, -1}, {1 << 20, 1 << 20}, {1 << 40, 1 << 40}} {
		if _, err := p.Render(context.Background(), size[0], size[1]); err == nil || !strings.Contains(err.Error(), "megapixels") {
			t.Errorf("%v pixels: %v, want an error", size, err)
		}
	}
}
