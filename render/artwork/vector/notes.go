package vector

import "gussetwright/geometry/phrase"

// matter is something of a file that is not shown as the file asks.
type matter int

// What may be noted, in the order in which it is told.
const (
	liveText matter = iota
	outsideImage
	outsideLink
	brokenImage
	filters
	masks
	patterns
	markers
	blendModes
	repeatedGradient
	linearGradient
	pathLength
	transformOrigin
	foreign
	unknown
	script
	animation
	styleRule
	brokenPath
	brokenValue
	missing
	loop
	matters // how many there are
)

// says returns the sentence for what was met so many times.
func (m matter) says(times int) phrase.Phrase {
	switch m {
	case liveText:
		return phrase.New("Text is not shown: turn it into outlines (%d ×)", times)
	case outsideImage:
		return phrase.New("An image outside of the file is not fetched: embed it (%d ×)", times)
	case outsideLink:
		return phrase.New("A link to something outside of the file is not followed (%d ×)", times)
	case brokenImage:
		return phrase.New("An embedded image is neither a sound PNG nor a sound JPEG and is left out (%d ×)", times)
	case filters:
		return phrase.New("Filters such as shadows and blurs are left out: turn them into an image (%d ×)", times)
	case masks:
		return phrase.New("Masks are left out, all of what they hide is shown (%d ×)", times)
	case patterns:
		return phrase.New("Pattern fills are left out: turn them into shapes (%d ×)", times)
	case markers:
		return phrase.New("Markers at the ends of lines are left out: turn them into shapes (%d ×)", times)
	case blendModes:
		return phrase.New("Blend modes are left out, all is painted plainly (%d ×)", times)
	case repeatedGradient:
		return phrase.New("A gradient that repeats is shown once (%d ×)", times)
	case linearGradient:
		return phrase.New("A gradient in linear light is blended as usual (%d ×)", times)
	case pathLength:
		return phrase.New("Dashes that are measured by a stated path length keep their own length (%d ×)", times)
	case transformOrigin:
		return phrase.New("An origin for turning and scaling is not heeded (%d ×)", times)
	case foreign:
		return phrase.New("Web content in the drawing is not shown (%d ×)", times)
	case unknown:
		return phrase.New("Elements that this program does not know are not shown (%d ×)", times)
	case script:
		return phrase.New("Scripts are not run (%d ×)", times)
	case animation:
		return phrase.New("Animations stand still (%d ×)", times)
	case styleRule:
		return phrase.New("Style rules of a kind that this program does not know are left out (%d ×)", times)
	case brokenPath:
		return phrase.New("A path with a mistake in it is drawn up to the mistake (%d ×)", times)
	case brokenValue:
		return phrase.New("Values that make no sense are left out (%d ×)", times)
	case missing:
		return phrase.New("Something is referred to that is not in the file (%d ×)", times)
	default:
		return phrase.New("Something that contains itself is cut off (%d ×)", times)
	}
}

// notebook counts what is to be noted.
type notebook [matters]int

func (n *notebook) add(m matter) { n[m]++ }

func (n *notebook) phrases() []phrase.Phrase {
	var list []phrase.Phrase
	for m, times := range n {
		if times > 0 {
			list = append(list, matter(m).says(times))
		}
	}
	return list
}
