package raster

import (
	"encoding/binary"

	"gussetwright/geometry/phrase"
	bounds "gussetwright/render/limits"
)

// mostProfile is the size of a colour profile at most, in bytes.
const mostProfile = bounds.PictureProfileBytes

// takeProfile keeps an ICC profile that fits the picture, and says so of one that
// does not. A PDF file must not name a profile that is damaged or has another
// number of channels.
func (h *header) takeProfile(profile []byte) {
	colours, ok := profileColours(profile)
	switch {
	case !ok:
		h.note(phrase.New("The colour profile in the file is damaged and left out."))
	case colours != h.colours:
		h.note(phrase.New("The colour profile in the file is for %s and the picture is %s; the profile is left out.",
			colours.word(), h.colours.word()))
	default:
		h.profile = profile[:binary.BigEndian.Uint32(profile)]
	}
}

// profileColours returns the colours that a profile is for. It looks at the header
// and at where the tags lie (ISO 15076-1, 7.2 and 7.3).
func profileColours(profile []byte) (colours Colours, ok bool) {
	const head, field = 128, 12
	if len(profile) < head+4 || len(profile) > mostProfile || string(profile[36:40]) != "acsp" {
		return 0, false
	}
	size := uint64(binary.BigEndian.Uint32(profile))
	if size < head+4 || size > uint64(len(profile)) {
		return 0, false
	}
	profile = profile[:size]
	fields, ok := slice(profile, head+4, field*uint64(binary.BigEndian.Uint32(profile[head:])))
	if !ok || len(fields) == 0 {
		return 0, false
	}
	for ; len(fields) > 0; fields = fields[field:] {
		from, length := binary.BigEndian.Uint32(fields[4:]), binary.BigEndian.Uint32(fields[8:])
		if _, ok := slice(profile, uint64(from), uint64(length)); !ok {
			return 0, false
		}
	}
	switch string(profile[16:20]) {
	case "GRAY":
		return Grey, true
	case "RGB ":
		return RGB, true
	case "CMYK":
		return CMYK, true
	}
	return 0, false
}
