package export_test

import (
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"image"
	"image/png"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

var anySpecs = flag.Int("specs", 7, "how many random specs TestAnySpecExports writes")

// Whatever Validate accepts is written without an error, in every kind: bags of any
// construction with entries anywhere within their limits or at an end of them, and
// with artwork anywhere. A few kinds take seconds, so each spec gets one of those and
// all that are quick; many more are seen with -specs 2000 -timeout 2h.
func TestAnySpecExports(t *testing.T) {
	files := map[string][]byte{"drawing.svg": drawing(), "photo.png": smallPicture(t), "page.pdf": smallPage(t)}
	quick, slow := byPace()
	for seed := range *anySpecs {
		random := rand.New(rand.NewPCG(uint64(seed), 7))
		spec := anySpec(random)
		spec.Artwork = anyArtwork(random)
		kinds := append(quick, slow[seed%len(slow)])
		t.Run(strconv.Itoa(seed), func(t *testing.T) {
			if err := writeAll(t, spec, files, kinds); err != nil {
				text, _ := json.Marshal(spec)
				t.Errorf("%v\n%s", err, text)
			}
		})
	}
}

// byPace parts the kinds into those that take a moment and those with many pictures.
func byPace() (quick, slow []export.Kind) {
	for _, kind := range export.Kinds() {
		switch kind.Name {
		case "png", "proof", "page", "pictures", "lesson", "practice", "animation":
			slow = append(slow, kind)
		default:
			quick = append(quick, kind)
		}
	}
	return quick, slow
}

func writeAll(t *testing.T, spec bag.Spec, files map[string][]byte, kinds []export.Kind) error {
	t.Helper()
	snapshot, err := document.DeriveWithArt(context.Background(), spec, files)
	if err != nil {
		return err
	}
	job := export.Job{Folder: t.TempDir(), Project: spec.Name, Snapshot: snapshot, Date: day, Kinds: kinds}
	_, err = export.Write(context.Background(), job, func(float64, string) {})
	return err
}

// anySpec returns a valid spec of which a random share of the entries was set at random.
func anySpec(random *rand.Rand) bag.Spec {
	for {
		spec := geomtest.RandomBag(random)
		spec.Name = pick(random, "", "a/b: c", "Größe № 5 ✂", "(\\)<&>\"'", "بيت الشاي")
		share := random.Float64()
		for i := range bag.Fields() {
			if field := &bag.Fields()[i]; random.Float64() < share {
				setAnyhow(random, field, &spec)
			}
		}
		addLists(random, &spec)
		if spec.Validate() == nil {
			return spec
		}
	}
}

// addLists gives some bags a family, sheets of their own and further quantities.
func addLists(random *rand.Rand, spec *bag.Spec) {
	for range random.IntN(3) {
		spec.Family = append(spec.Family, spec.Scaled(pick(random, "", "small", "a/b: c"), spec.Body.Width*(0.5+random.Float64())))
	}
	for range random.IntN(3) {
		spec.Breaks = append(spec.Breaks, float64(1+random.IntN(100_000)))
		spec.Stock = append(spec.Stock, bag.StockSheet{
			Name: pick(random, "", "=1+1", "Größe № 5"), Width: float64(100 + random.IntN(1900)), Height: float64(100 + random.IntN(1900)),
			Grain: pick(random, bag.GrainEither, bag.GrainAlongWidth, bag.GrainAlongHeight), Price: random.Float64(),
		})
	}
}

// setAnyhow gives an entry any of its values, often the least or the most.
func setAnyhow(random *rand.Rand, field *bag.Field, spec *bag.Spec) {
	switch field.Kind() {
	case bag.Choice:
		field.SetChoice(spec, field.Options[random.IntN(len(field.Options))])
	case bag.Switch:
		field.SetSwitch(spec, random.IntN(2) == 0)
	case bag.Number:
		value := field.Least + random.Float64()*(field.Most-field.Least)
		switch random.IntN(4) {
		case 0:
			value = field.Least
		case 1:
			value = field.Most
		case 2:
			value = math.Round(value*10) / 10
		}
		if field.Whole {
			value = math.Round(value)
		}
		field.SetNumber(spec, value)
	}
}

// anyArtwork returns up to three pieces of artwork, placed in any way.
func anyArtwork(random *rand.Rand) []bag.Artwork {
	var list []bag.Artwork
	for range random.IntN(4) {
		art := bag.NewArtwork(pick(random, "drawing.svg", "photo.png", "page.pdf"), pick(random, bag.ArtworkPlaces()...))
		art.Fit = pick(random, bag.FitCover, bag.FitContain, bag.FitExact)
		art.X, art.Y = pick(random, 0, 10.5, -5000, 5000), pick(random, 0, -0.1, -5000, 5000)
		art.Scale = pick(random, 1.0, 1, 0.1, 0.001, 20, 1000)
		art.Turn = pick(random, 0, 90, -33.3, 360)
		art.Mirror = random.IntN(2) == 0
		art.Opacity = pick(random, 100.0, 50, 0)
		art.Repeat = pick(random, bag.RepeatNone, bag.RepeatGrid, bag.RepeatHalfDrop)
		art.Holds = pick(random, bag.HoldsPicture, bag.HoldsEAN13)
		list = append(list, art)
	}
	return list
}

func pick[T any](random *rand.Rand, options ...T) T { return options[random.IntN(len(options))] }

// smallPicture returns a picture that can be seen through in places.
func smallPicture(t *testing.T) []byte {
	t.Helper()
	picture := image.NewNRGBA(image.Rect(0, 0, 24, 16))
	for i := range picture.Pix {
		picture.Pix[i] = byte(7 * i)
	}
	var out bytes.Buffer
	if err := png.Encode(&out, picture); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// smallPage returns a page of a PDF file, which our own writer makes.
func smallPage(t *testing.T) []byte {
	t.Helper()
	kinds, err := export.Choose("dieline")
	if err != nil {
		t.Fatal(err)
	}
	job := export.Job{Folder: t.TempDir(), Project: "page", Snapshot: demo(t), Date: day, Kinds: kinds}
	paths, err := export.Write(context.Background(), job, func(float64, string) {})
	if err != nil {
		t.Fatal(err)
	}
	return read(t, paths[0])
}
