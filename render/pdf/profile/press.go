package profile

import "gussetwright/geometry/phrase"

// Press reads a profile that is to be the printing condition of a file. It must be
// of class prtr and for CMYK, and know what its inks look like. Errors say what it is
// instead and what to choose.
func Press(data []byte) (Profile, error) {
	p, err := Read(data)
	if err != nil {
		return Profile{}, err
	}
	if p.Class != "prtr" {
		return Profile{}, phrase.Errorf("the profile %q is that of %s; choose the profile of the printing condition, which your printer names", p.Name, kind(p.Class))
	}
	if p.Space != "CMYK" {
		return Profile{}, phrase.Errorf("the profile %q is for %s inks; choose one for printing in CMYK", p.Name, p.Space)
	}
	// A table of any kind says in its ninth byte from how many inks it starts.
	if table := p.tags["A2B0"]; len(table) < 12 || table[8] != 4 {
		return Profile{}, phrase.Errorf("the profile %q is damaged: it lacks the table from four inks to colours; get it anew", p.Name)
	}
	return p, nil
}

// kind says what a profile of a class belongs to.
func kind(class string) phrase.Phrase {
	switch class {
	case "mntr":
		return phrase.New("a screen (class mntr)")
	case "scnr":
		return phrase.New("a scanner or camera (class scnr)")
	case "spac":
		return phrase.New("a colour space (class spac)")
	case "link":
		return phrase.New("a fixed conversion (class link)")
	case "abst":
		return phrase.New("a colour effect (class abst)")
	case "nmcl":
		return phrase.New("named colours (class nmcl)")
	}
	return phrase.New("something else (class %q)", class)
}
