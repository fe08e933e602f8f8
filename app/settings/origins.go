package settings

import (
	"encoding/json"
	"slices"
)

// Origin is where a file of a project came from on this computer. It is told by its
// content, so that it is found again for a project that was moved or copied, and no
// project needs to keep paths.
type Origin struct {
	Sum    string `json:"sum"`              // of the content, as SHA-256 in hexadecimal digits
	Path   string `json:"path"`             // absolute
	Missed bool   `json:"missed,omitempty"` // the user was told that nothing is there any more
}

// How many origins are remembered, and how many of them of one path, whose content is
// another one each time that it is drawn anew.
const (
	mostOrigins    = 400
	mostOfOnePlace = 6
)

// Origin returns where a file with some content was read from last, and false where
// that is not known.
func (s *Settings) Origin(sum string) (Origin, bool) {
	for _, known := range s.origins() {
		if known.Sum == sum {
			return known, true
		}
	}
	return Origin{}, false
}

// AddOrigin remembers where files were read from, in place of what was known of the same
// content. The oldest are forgotten.
func (s *Settings) AddOrigin(added ...Origin) {
	known := s.origins()
	before := slices.Clone(known)
	for _, one := range added {
		known = slices.DeleteFunc(known, func(o Origin) bool { return o.Sum == one.Sum })
		known = slices.Insert(known, 0, one)
	}
	ofPlace := map[string]int{}
	known = slices.DeleteFunc(known, func(o Origin) bool {
		ofPlace[o.Path]++
		return ofPlace[o.Path] > mostOfOnePlace
	})
	known = known[:min(len(known), mostOrigins)]
	if slices.Equal(known, before) {
		return
	}
	text, err := json.Marshal(known)
	if err != nil {
		return // texts and a yes or no can always be written
	}
	s.store.SetString(originsKey, string(text))
}

// origins returns all that is known, the latest first; nothing where what is stored is
// no list of origins.
func (s *Settings) origins() []Origin {
	var known []Origin
	if err := json.Unmarshal([]byte(s.store.String(originsKey)), &known); err != nil {
		return nil
	}
	return known
}
