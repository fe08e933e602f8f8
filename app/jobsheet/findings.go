package jobsheet

import (
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
)

// findingParts returns the first of what is open.
func (m *maker) findingParts(shown int) []part {
	if len(m.errors)+len(m.warnings) == 0 {
		return []part{sentence(m.say("Nothing is open."))}
	}
	var parts []part
	left := shown
	add := func(kind phrase.Word, list []check.Finding) {
		for _, f := range list[:min(left, len(list))] {
			parts = append(parts, pair{m.say(kind), capitalised(m.tell(f.Message)) + "."})
			left--
		}
	}
	add("Error", m.errors)
	add("Warning", m.warnings)
	if more := m.andMore(len(m.errors)+len(m.warnings), shown); more != "" {
		parts = append(parts, remark(more))
	}
	return parts
}

func (m *maker) cautionParts() []part {
	var parts []part
	for _, caution := range cautions() {
		parts = append(parts, sentence(m.say(caution)))
	}
	return parts
}
