package entry

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Whatever an entry shows, and whatever is written of it in a text, can be typed in and
// means the same: in both languages, in all units, for every number of a bag.
func TestWhatIsShownCanBeTyped(t *testing.T) {
	random := rand.New(rand.NewPCG(2003, 10))
	t.Cleanup(func() { load(t, "en") })
	for _, language := range []string{"en", "de"} {
		load(t, language)
		for i := range bag.Fields() {
			field := &bag.Fields()[i]
			if field.Kind() != bag.Number {
				continue
			}
			quantity := OfField(document.New(), field)
			for _, unit := range geometry.Units() {
				for _, value := range values(random, field) {
					checkReread(t, language, &quantity, value, unit)
				}
			}
		}
	}
}

func load(t *testing.T, language string) {
	t.Helper()
	if err := words.Load(language); err != nil {
		t.Fatal(err)
	}
}

// checkReread reads what is written of a value, which must give what is written.
func checkReread(t *testing.T, language string, q *Quantity, value float64, unit geometry.Unit) {
	t.Helper()
	shown, finest := q.format(value, unit), q.scale(unit)/math.Pow10(q.decimals(unit))
	if q.Money {
		finest = math.Pow10(-PriceDecimals)
	}
	least, most := q.limits(unit)
	low, high := q.reachTexts(unit)
	for text, want := range map[string]float64{
		shown: value, q.inText(value, unit): value, q.withUnit(value, unit): value,
		least: q.Least, most: q.Most, low: value, high: value,
	} {
		got, complaint := q.read(text, unit)
		if text == low || text == high {
			want = got // an end of the slider is some value of the entry
		}
		slack := finest / 2
		if text == least || text == most {
			slack = finest // rounded inwards
		}
		if complaint != "" || math.Abs(got-want) > slack+1e-6 {
			t.Errorf("%s, %s in %s: %v is written %q, which is read as %v %s", language, q.Label, unit, want, text, got, complaint)
		}
		if again := q.format(got, unit); text == shown && again != shown {
			t.Errorf("%s, %s in %s: %q is typed and shown as %q", language, q.Label, unit, shown, again)
		}
	}
}

// values are some that a field may have: its limits, and others of many sizes.
func values(random *rand.Rand, field *bag.Field) []float64 {
	list := []float64{field.Least, field.Most}
	for range 20 {
		value := field.Least + (field.Most-field.Least)*math.Pow(random.Float64(), 4)
		digits := math.Pow10(random.IntN(4))
		if field.Whole {
			digits = 1
		}
		list = append(list, min(max(math.Round(value*digits)/digits, field.Least), field.Most))
	}
	return list
}
