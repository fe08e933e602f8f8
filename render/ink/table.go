package ink

// Table gives the colours of RGB for whole pictures, of 8 bits and within 2 of 255.
// It never changes and holds 2 MB.
type Table struct {
	// corners holds the colours of every cyan and magenta, without and with full
	// yellow and black: the equations are linear in each ink, so that yellow and
	// black can be mixed in afterwards.
	corners [1 << 16][4]uint64
}

// NewTable returns the table.
func NewTable() *Table {
	t := &Table{}
	for i := range t.corners {
		c, m := weight(uint8(i>>8)), weight(uint8(i))
		for j := range t.corners[i] {
			above := j * yellow // none, yellow, black, both
			free := mix(lanes(above), lanes(above|cyan), c)
			full := mix(lanes(above|magenta), lanes(above|cyan|magenta), c)
			t.corners[i][j] = mix(free, full, m)
		}
	}
	return t
}

// RGB returns the colour on the screen of inks from 0 (none) to 255 (full).
func (t *Table) RGB(c, m, y, k uint8) (r, g, b uint8) {
	corner := &t.corners[int(c)<<8|int(m)]
	yellow, black := weight(y), weight(k)
	mixed := mix(mix(corner[0], corner[1], yellow), mix(corner[2], corner[3], yellow), black)
	return uint8(mixed), uint8(mixed >> 16), uint8(mixed >> 32)
}

// lanes packs a primary into one word of three lanes of 16 bits, so that one
// multiplication serves all three channels.
func lanes(number int) uint64 {
	p := primaries[number]
	return uint64(p[0]) | uint64(p[1])<<16 | uint64(p[2])<<32
}

// weight returns an amount of ink from 0 to 256.
func weight(amount uint8) uint64 { return uint64(amount) + uint64(amount>>7) }

// mix returns a + (b − a) × weight/256 in each lane, rounded.
func mix(a, b, weight uint64) uint64 {
	const half, low = 0x0080_0080_0080, 0x00ff_00ff_00ff
	return (a*(256-weight) + b*weight + half) >> 8 & low
}
