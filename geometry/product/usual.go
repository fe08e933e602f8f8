package product

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"slices"

	"gussetwright/geometry/bag"
)

// Usual is a size that is made often.
type Usual struct {
	Name string `json:"name"`
	Size
}

// ReadUsual reads a list of usual sizes. The error names the size that is wrong.
func ReadUsual(data []byte) ([]Usual, error) {
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.DisallowUnknownFields()
	var list []Usual
	if err := decoder.Decode(&list); err != nil {
		return nil, fmt.Errorf("read usual sizes: %w", err)
	}
	for i, u := range list {
		if u.Name == "" || !(u.Width > 0 && u.Gusset >= 0 && u.Height > 0) {
			return nil, fmt.Errorf("read usual sizes: number %d, %q, of %g × %g × %g mm lacks a name or a size; give all four",
				i+1, u.Name, u.Width, u.Gusset, u.Height)
		}
	}
	return list, nil
}

// Match is a usual size beside a product.
type Match struct {
	Usual
	// Lacks is what the size has too little of; all 0 when the product goes in.
	Lacks Size
	Spare float64 // litres of the bag that the product leaves empty
}

// Fits tells whether the product goes in.
func (m Match) Fits() bool { return m.Lacks == Size{} }

func (m Match) lack() float64 { return m.Lacks.Width + m.Lacks.Gusset + m.Lacks.Height }

// Rank returns the usual sizes, those that hold the product first and of them the
// one that leaves least empty, then the others by how much they lack.
func (p Product) Rank(sizes []Usual) []Match {
	matches := make([]Match, 0, len(sizes))
	for _, u := range sizes {
		matches = append(matches, Match{u, p.lacks(u.Size), u.Volume() - p.Volume()})
	}
	slices.SortStableFunc(matches, func(a, b Match) int {
		return cmp.Or(cmp.Compare(a.lack(), b.lack()), cmp.Compare(a.Spare, b.Spare))
	})
	return matches
}

// lacks returns what a bag has too little of for the product. Loose goods settle:
// only the height counts that they reach on the base of the bag.
func (p Product) lacks(s Size) Size {
	needs := p.Needs()
	if p.Kind != bag.ProductFree {
		return Size{max(needs.Width-s.Width, 0), max(needs.Gusset-s.Gusset, 0), max(needs.Height-s.Height, 0)}
	}
	base := (s.Width - p.Ease) * (s.Gusset - p.Ease)
	if base <= 0 {
		return Size{max(p.Ease-s.Width, 0), max(p.Ease-s.Gusset, 0), needs.Height}
	}
	return Size{Height: max(p.Volume()*1e6/base+p.Headroom-s.Height, 0)}
}
