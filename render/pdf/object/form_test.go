package object

import "testing"

// Objects that refer to each other, even in a circle, are numbered once, in the
// order in which they are met.
func TestNumberingMeetsEachObjectOnce(t *testing.T) {
	first, second := &Indirect{}, &Indirect{}
	first.Value = Dict{{"Next", second}, {"Self", first}}
	second.Value = Array{Integer(2), first, &Indirect{Plain{Dict{{"Back", second}}, []byte("x")}}}
	file := map[Reference]string{}
	taken := Reference(10)
	numbering := Numbering{
		Reserve: func() Reference { taken++; return taken },
		Set:     func(n Reference, o Object) { file[n] = string(o.AppendTo(nil)) },
	}
	placed := numbering.Place(Array{first, second, nil})
	if got := string(placed.AppendTo(nil)); got != "[11 0 R 12 0 R null]" {
		t.Errorf("placed %s", got)
	}
	want := map[Reference]string{
		11: "<< /Next 12 0 R /Self 11 0 R >>",
		12: "[2 11 0 R 13 0 R]",
		13: "<< /Back 12 0 R /Length 1 >>\nstream\nx\nendstream",
	}
	for n, text := range want {
		if file[n] != text {
			t.Errorf("object %d is %s, want %s", n, file[n], text)
		}
	}
	if len(file) != len(want) {
		t.Errorf("%d objects, want %d", len(file), len(want))
	}
	if again := numbering.Place(first).AppendTo(nil); string(again) != "11 0 R" {
		t.Errorf("met again it is %s", again)
	}
}

// Change sees every dictionary, those of streams too, before what they refer to.
func TestNumberingChangesDictionaries(t *testing.T) {
	inner := &Indirect{Dict{{"Old", Integer(1)}}}
	file := map[Reference]string{}
	numbering := Numbering{
		Reserve: func() Reference { return Reference(len(file) + 1) },
		Set:     func(n Reference, o Object) { file[n] = string(o.AppendTo(nil)) },
		Change: func(d Dict) Dict {
			if d.Get("Old") != nil {
				return Dict{{"New", Integer(2)}}
			}
			return d
		},
	}
	placed := numbering.Place(Plain{Dict{{"Part", inner}, {"Own", Dict{{"Old", Null{}}}}}, nil})
	if got, want := string(placed.AppendTo(nil)), "<< /Part 1 0 R /Own << /New 2 >> /Length 0 >>\nstream\n\nendstream"; got != want {
		t.Errorf("placed %q, want %q", got, want)
	}
	if file[1] != "<< /New 2 >>" || string(inner.Value.AppendTo(nil)) != "<< /Old 1 >>" {
		t.Errorf("object %s, and the one given is now %s", file[1], inner.Value.AppendTo(nil))
	}
}

func TestDirect(t *testing.T) {
	ring := &Indirect{}
	ring.Value = ring
	chain := &Indirect{&Indirect{Name("End")}}
	for _, c := range []struct{ from, want Object }{
		{chain, Name("End")}, {Integer(3), Integer(3)}, {nil, nil}, {&Indirect{}, nil}, {ring, Null{}},
	} {
		if got := Direct(c.from); got != c.want {
			t.Errorf("%v stands for %v, want %v", c.from, got, c.want)
		}
	}
}
