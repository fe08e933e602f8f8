package meeting

import (
	"image/png"
	"os"
	"testing"

	"gussetwright/app/settings"
)

func TestLook(t *testing.T) {
	save := func(name string, b *bench) {
		f, _ := os.Create("/tmp/m/" + name + ".png")
		png.Encode(f, b.capture())
		f.Close()
	}
	os.MkdirAll("/tmp/m", 0o755)
	b := newBench(t, demo(t), 1024, 700)
	save("one", b)
	b.keepThree()
	b.typed("2")
	save("two", b)
	b.typed("c")
	save("compare", b)
	b = newBench(t, demo(t), 1920, 1080, dark)
	save("one-dark", b)
	b.keepThree()
	b.typed("c1")
	save("compare-dark", b)
	b = newBench(t, demo(t), 1024, 700, func(s *settings.Settings) { s.SetTextScale(2) })
	b.keepThree()
	b.resize(700, 300, 800)
	b.typed("c")
	save("large", b)
}
