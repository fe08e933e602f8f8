package solid

import (
	"image"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"gussetwright/geometry"
)

// Triangles around a common point fill each pixel of their hull exactly once.
func TestScanNeitherOverlapsNorGaps(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	const size = 60
	for range 200 {
		n := 3 + random.IntN(9)
		hull := make([]geometry.Vec2, n)
		for i := range hull {
			hull[i] = geometry.Vec2{X: 30, Y: 30}.Add(geometry.Polar(10+random.Float64()*30, 2*math.Pi*float64(i)/float64(n)))
		}
		count := [size * size]int{}
		var s scanner
		for i := range hull {
			triangle := []geometry.Vec2{{X: 30, Y: 30}, hull[i], hull[(i+1)%n]}
			s.begin()
			s.polygon(triangle, size)
			s.fill(size, turnOf(triangle), func(row, left, right int) {
				for x := left; x < right; x++ {
					count[row*size+x]++
				}
			})
		}
		outline := geometry.Polygon(hull...)
		for y := range size {
			for x := range size {
				want := 0
				if outline.Contains(geometry.Vec2{X: float64(x) + 0.5, Y: float64(y) + 0.5}) {
					want = 1
				}
				if count[y*size+x] != want {
					t.Fatalf("pixel (%d, %d) is filled %d times, want %d, by %v", x, y, count[y*size+x], want, hull)
				}
			}
		}
	}
}

// Holes stay open where they overlap each other or the border.
func TestScanKeepsHolesOpen(t *testing.T) {
	square := func(x, y, side float64, hole bool) []geometry.Vec2 {
		corners := []geometry.Vec2{{X: x, Y: y}, {X: x, Y: y + side}, {X: x + side, Y: y + side}, {X: x + side, Y: y}}
		if hole {
			corners[1], corners[3] = corners[3], corners[1]
		}
		return corners
	}
	var s scanner
	s.begin()
	s.polygon(square(0, 0, 20, false), 30)
	s.polygon(square(5, 5, 6, true), 30)
	s.polygon(square(8, 8, 6, true), 30)
	s.polygon(square(17, 3, 6, true), 30)
	count := 0
	s.fill(30, 1, func(_, left, right int) { count += right - left })
	// The square less two holes of 36 that share 9, and less half of the third.
	if want := 400 - (36 + 36 - 9) - 18; count != want {
		t.Errorf("%d pixels are filled, want %d", count, want)
	}
}

// What crosses the near plane is cut off there and the rest is drawn where it
// belongs; what lies behind the eye is not drawn.
func TestNearPlane(t *testing.T) {
	l := newLens(Front, Frame{Radius: 100}, 100, 100)
	var c canvas
	c.resize(100, 100)
	// A floor that runs from far ahead to far behind the eye.
	floor := quad(
		geometry.Vec3{X: -50, Y: -5000, Z: -20}, geometry.Vec3{X: 50, Y: -5000, Z: -20},
		geometry.Vec3{X: 50, Y: 5000, Z: -20}, geometry.Vec3{X: -50, Y: 5000, Z: -20}, card)
	p, facing, ok := l.plane(&floor)
	if !ok || !facing {
		t.Fatalf("the floor is not seen from above: %v, %v", facing, ok)
	}
	p.colour, p.shade = 0x123456, 256
	c.fill(&l, &floor, &p, facing)
	if below, above := c.colours[99*100+50], c.colours[10*100+50]; below != 0x123456 || above != 0 {
		t.Errorf("below the middle %06x, above %06x", below, above)
	}
	behind := quad(
		geometry.Vec3{X: -50, Y: -2000, Z: -50}, geometry.Vec3{X: 50, Y: -2000, Z: -50},
		geometry.Vec3{X: 50, Y: -2000, Z: 50}, geometry.Vec3{X: -50, Y: -2000, Z: 50}, card)
	c.resize(100, 100)
	clear(c.colours)
	if p, facing, ok := l.plane(&behind); ok {
		p.colour, p.shade = 0x123456, 256
		c.fill(&l, &behind, &p, facing)
	}
	for i, colour := range c.colours {
		if colour != 0 {
			t.Fatalf("pixel %d shows what is behind the eye", i)
		}
	}
}

func TestMix(t *testing.T) {
	tests := []struct{ got, want packed }{
		{mix(0x000000, 0xffffff, 0), 0x000000},
		{mix(0x000000, 0xffffff, 256), 0xffffff},
		{mix(0x204060, 0x406080, 128), 0x305070},
		{shaded(0x8040ff, 256), 0x8040ff},
		{shaded(0x8040fe, 128), 0x40207f},
		{meanOfFour(0x000000, 0xffffff, 0x000000, 0xffffff), 0x808080},
		{meanOfFour(0x010203, 0x010203, 0x010203, 0x010203), 0x010203},
	}
	for i, test := range tests {
		if test.got != test.want {
			t.Errorf("%d: got %06x, want %06x", i, test.got, test.want)
		}
	}
}

// Textures mix their pixels, keep to their border and have smaller versions.
func TestTexture(t *testing.T) {
	l := level{width: 2, height: 2, scale: 1, pixels: []packed{0x000000, 0xff0000, 0x00ff00, 0xffff00}}
	for _, test := range []struct {
		x, y float64
		want packed
	}{
		{0.5, 0.5, 0x000000}, {1.5, 1.5, 0xffff00}, {1, 1, 0x7f7f00}, {-9, 99, 0x00ff00}, {math.NaN(), 0, 0x000000},
	} {
		if got := l.at(test.x, test.y); got != test.want {
			t.Errorf("at (%v, %v): %06x, want %06x", test.x, test.y, got, test.want)
		}
	}
	base := level{width: 64, height: 32, scale: 4, pixels: make([]packed, 64*32)}
	for i := range base.pixels {
		base.pixels[i] = 0xffffff * packed(i&1)
	}
	texture := newTexture(base, 8)
	if got := texture.levelFor(2); got.width != 32 || got.scale != 2 || got.pixels[5] != 0x808080 {
		t.Errorf("at half the size: %d pixels wide, %v a mm, %06x", got.width, got.scale, got.pixels[5])
	}
	if texture.levelFor(100) != &texture.levels[0] || texture.levelFor(0.001) != &texture.levels[len(texture.levels)-1] {
		t.Error("very large and very small pictures do not take the first and the last level")
	}
}

// Camera limits: the picture never flips and never gets lost.
func TestCameraLimits(t *testing.T) {
	c := Camera{Azimuth: 20, Elevation: 3, Zoom: 1e9, Shift: geometry.Vec2{X: -1e9}}.Limited()
	if c.Elevation != math.Pi/2 || c.Zoom != GreatestZoom || c.Shift.X != -GreatestZoom || math.Abs(c.Azimuth) > math.Pi {
		t.Errorf("limited to %+v", c)
	}
	if math.Abs(math.Sin(c.Azimuth)-math.Sin(20)) > 1e-9 {
		t.Errorf("the azimuth 20 became %v, another direction", c.Azimuth)
	}
	// A cube seen along its diagonal shows its three edges equally long.
	l := newLens(Isometric, Frame{Radius: 1}, 100, 100)
	for _, axis := range []geometry.Vec3{{X: 1}, {Y: 1}, {Z: 1}} {
		if along := axis.Dot(l.toward); math.Abs(math.Abs(along)-1/math.Sqrt(3)) > 1e-12 {
			t.Errorf("the axis %v lies %v along the view, want 1/√3", axis, along)
		}
	}
}

// References have their real sizes: A4 of ISO 216 is 210 × 297 mm. The others are common
// sizes (values from memory); the hand stands on 36 mm of wrist and stand.
func TestReferenceSizes(t *testing.T) {
	for reference, want := range map[Reference]geometry.Vec3{
		SheetA4: {X: 210, Z: 297}, Can33: {X: 66, Z: 115}, Bottle75: {X: 76, Z: 300}, Hand: {Z: 36 + 190}, Person: {Z: 1700},
	} {
		object := reference.place(&Model{}, 0)
		least, greatest := object.bounds()
		if height := greatest.Z; math.Abs(height-want.Z) > 2 || math.Abs(least.Z) > 2 {
			t.Errorf("%s stands from %.1f to %.1f mm, want 0 to %v", reference, least.Z, height, want.Z)
		}
		if width := greatest.X - least.X; want.X > 0 && math.Abs(width-want.X) > 0.5 {
			t.Errorf("%s is %.1f mm wide, want %v", reference, width, want.X)
		}
		if greatest.X >= 0 {
			t.Errorf("%s stands in the bag", reference)
		}
		if alone, want := reference.Frame(0), least.Mid(greatest); alone.Middle != want || 2*alone.Rise != greatest.Z-least.Z {
			t.Errorf("%s alone is framed by %+v, want the middle %v", reference, alone, want)
		}
	}
}

// Every reference has a shape, and they are in the order of their heights.
func TestReferencesByHeight(t *testing.T) {
	before := 0.0
	for _, reference := range References()[1:] {
		rise := reference.Frame(0).Rise
		if rise <= before || len(things) != len(References())-1 {
			t.Errorf("%s is %.0f mm high, after one of %.0f mm", reference, 2*rise, 2*before)
		}
		before = rise
	}
}

// What is taller than the bag throws its whole shadow, which is nowhere cut off.
func TestTallReferencesThrowTheirShadow(t *testing.T) {
	small := &Model{greatest: geometry.Vec3{X: 240, Y: 100, Z: 120}, height: 120}
	for _, m := range []*Model{small, {}} {
		for azimuth := -3.0; azimuth < 3; azimuth += 0.5 {
			var s shadow
			s.reckon(m, Person.place(m, SideFor(azimuth)), lightsFor(azimuth).main)
			for i := range shadowCells {
				for _, cell := range []int{i, i * shadowCells, (shadowCells-1)*shadowCells + i, i*shadowCells + shadowCells - 1} {
					if s.density[cell] > 6 {
						t.Fatalf("beside a bag of %g mm, from %g, the shadow is cut off where it is %d of 255 dark", m.height, azimuth, s.density[cell])
					}
				}
			}
		}
	}
}

// Whatever side of the bag is seen, the thing beside it stands to the left and is not
// hidden.
func TestReferenceIsSeen(t *testing.T) {
	for azimuth, want := range map[float64]int{0: 0, math.Pi / 4: 0, 0.3: 0, -0.3: 0, math.Pi / 2: 1, 2: 1, 3: 2, math.Pi: 2, -3: 2, -math.Pi / 2: 3, -1: 3} {
		side := SideFor(azimuth)
		if side != want {
			t.Errorf("from %v the side is %d, want %d", azimuth, side, want)
		}
		m := &Model{greatest: geometry.Vec3{X: 240, Y: 100, Z: 360}}
		l := newLens(Camera{Azimuth: azimuth, Zoom: 1}, m.Frame(Can33, side), 100, 100)
		least, greatest := Can33.place(m, side).bounds()
		can := l.seen(least.Mid(greatest))
		for _, corner := range []geometry.Vec3{{}, {X: 240}, {Y: 100}, {X: 240, Y: 100}} {
			if bag := l.seen(corner); can.X > bag.X && can.Z > bag.Z {
				t.Errorf("from %v the can at %v lies behind the corner %v", azimuth, can, bag)
			}
		}
	}
}

// A texture that was of another picture is the same as a new one, whether that was larger
// or smaller.
func TestTextureTakesAnotherPicture(t *testing.T) {
	picture := func(width, height, step int) *image.RGBA {
		p := image.NewRGBA(image.Rect(0, 0, width, height))
		for i := range p.Pix {
			p.Pix[i] = uint8(i * step)
		}
		return p
	}
	used := &Texture{}
	for _, size := range []image.Point{{40, 30}, {90, 70}, {9, 60}, {0, 5}, {64, 64}} {
		p := picture(size.X, size.Y, 7+size.X)
		used.Take(p, 2, float64(size.Y)/2)
		if fresh := NewTexture(p, 2, float64(size.Y)/2); !reflect.DeepEqual(used.levels, fresh.levels) || used.height != fresh.height {
			t.Errorf("%v: a texture that was used before differs from a new one", size)
		}
	}
}

// What a texture took for a near look it does not keep for a distant one.
func TestTextureLetsGoOfMemory(t *testing.T) {
	near, far := image.NewRGBA(image.Rect(0, 0, 1000, 1000)), image.NewRGBA(image.Rect(0, 0, 100, 100))
	texture := NewTexture(near, 8, 125)
	texture.Take(far, 0.8, 125)
	if kept := cap(texture.levels[0].pixels); kept > muchTooLarge*100*100 {
		t.Errorf("room for %d pixels is kept for 10000", kept)
	}
}
