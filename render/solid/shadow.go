package solid

import (
	"math"

	"gussetwright/geometry"
)

// shadow is how dark the ground is around the bag, on a grid.
type shadow struct {
	corner  geometry.Vec2 // of the grid, mm
	cell    float64       // mm
	across  int           // cells each way
	density []uint8       // 255 where no light comes

	foot, thrown []float32 // scratch, cells
	line         []float32
	flat         []geometry.Vec2
	scan         scanner
}

const (
	shadowCells = 120
	// The cast shadow is shorter than the light would throw it: a long one would
	// take the eye off the bag.
	castLength  = 0.42
	castDensity = 0.45
	footDensity = 0.75
)

// reckon makes it the shadow of the paper: the dark under and close around the bag,
// and a wide, faint one to the side away from the light. beside, which may be nil,
// stands next to the bag.
func (s *shadow) reckon(m *Model, beside *object, light geometry.Vec3) {
	throw := geometry.Vec2{X: -light.X, Y: -light.Y}.Scale(castLength / light.Z)
	low := geometry.Rect{Min: geometry.Vec2{X: m.least.X, Y: m.least.Y}, Max: geometry.Vec2{X: m.greatest.X, Y: m.greatest.Y}}
	tallest := m.height
	if beside != nil {
		least, greatest := beside.bounds()
		tallest = max(tallest, greatest.Z)
		low = low.Union(geometry.Rect{Min: geometry.Vec2{X: least.X, Y: least.Y}, Max: geometry.Vec2{X: greatest.X, Y: greatest.Y}})
	}
	cast := throw.Scale(tallest)
	far := geometry.Rect{Min: low.Min.Add(cast), Max: low.Max.Add(cast)}
	spread := 0.09 * (low.Width() + low.Height() + m.height)
	area := low.Union(far).Inset(-1.6 * spread)
	s.corner, s.across, s.cell = area.Min, shadowCells, max(area.Width(), area.Height())/shadowCells
	s.empty()
	for i := range m.surfaces {
		if m.surfaces[i].material != printed {
			continue
		}
		outline := m.surfaces[i].loops[0]
		s.cover(s.foot, outline, geometry.Vec2{}, m.height/4)
		s.cover(s.thrown, outline, throw, math.Inf(1))
	}
	if beside != nil {
		for _, outline := range beside.outlines() {
			s.cover(s.foot, outline, geometry.Vec2{}, m.height/4)
			s.cover(s.thrown, outline, throw, math.Inf(1))
		}
	}
	s.blur(s.foot, spread*0.22)
	s.blur(s.thrown, spread*0.6)
	for i := range s.foot {
		light := (1 - footDensity*float64(s.foot[i])) * (1 - castDensity*float64(s.thrown[i]))
		s.density[i] = uint8(255 * (1 - light))
	}
}

// empty takes the light off no cell.
func (s *shadow) empty() {
	if s.density == nil {
		const cells = shadowCells * shadowCells
		s.foot, s.thrown, s.density, s.line = make([]float32, cells), make([]float32, cells), make([]uint8, cells), make([]float32, shadowCells)
		return
	}
	clear(s.foot)
	clear(s.thrown)
}

// cover marks the cells below a polygon, each point thrown to the side by its
// height. Points above the ceiling are brought down to it.
func (s *shadow) cover(cells []float32, outline []geometry.Vec3, throw geometry.Vec2, ceiling float64) {
	s.flat = s.flat[:0]
	for _, p := range outline {
		at := geometry.Vec2{X: p.X, Y: p.Y}.Add(throw.Scale(min(p.Z, ceiling))).Sub(s.corner)
		s.flat = append(s.flat, at.Scale(1/s.cell))
	}
	s.scan.begin()
	s.scan.polygon(s.flat, s.across)
	s.scan.fill(s.across, turnOf(s.flat), func(row, left, right int) {
		for i := row*s.across + left; i < row*s.across+right; i++ {
			cells[i] = 1
		}
	})
}

// blur spreads the cells: three passes of a running mean come close to a bell curve.
func (s *shadow) blur(cells []float32, reach float64) {
	radius := max(int(math.Round(reach/s.cell)), 1)
	for range 3 {
		for i := range s.across {
			runningMean(cells[i*s.across:], 1, s.across, radius, s.line)
		}
		for i := range s.across {
			runningMean(cells[i:], s.across, s.across, radius, s.line)
		}
	}
}

// runningMean replaces count cells, a stride apart, by the mean of each and its
// neighbours up to radius away; beyond the ends lies 0.
func runningMean(cells []float32, stride, count, radius int, line []float32) {
	for i := range count {
		line[i] = cells[i*stride]
	}
	var sum float32
	for i := range min(radius, count) {
		sum += line[i]
	}
	share := 1 / float32(2*radius+1)
	for i := range count {
		if i+radius < count {
			sum += line[i+radius]
		}
		if i-radius-1 >= 0 {
			sum -= line[i-radius-1]
		}
		cells[i*stride] = max(sum*share, 0)
	}
}

// lay darkens the ground where the canvas still shows the background. Seen from below
// the ground is clear.
func (s *shadow) lay(c *canvas, l *lens, strength float64) {
	size := s.cell * float64(s.across)
	x, y := s.corner.X, s.corner.Y
	const below = -0.5
	ground := quad(
		geometry.Vec3{X: x, Y: y, Z: below}, geometry.Vec3{X: x + size, Y: y, Z: below},
		geometry.Vec3{X: x + size, Y: y + size, Z: below}, geometry.Vec3{X: x, Y: y + size, Z: below}, card)
	p, facing, ok := l.plane(&ground)
	if !ok || !facing {
		return
	}
	c.scan.begin()
	p.least, p.most = c.trace(l, ground.loops[0])
	full := uint32(256 * strength)
	c.scan.fill(c.width, 1, func(row, left, right int) {
		n, u, v := p.nearness.at(row, left), p.u.at(row, left), p.v.at(row, left)
		for i := row*c.width + left; i < row*c.width+right; i++ {
			if c.nearness[i] == 0 {
				cells := 1 / (p.within(n) * s.cell)
				if dark := s.at(u*cells, v*cells) * full >> 16; dark > 0 {
					c.colours[i] = shaded(c.colours[i], 256-dark)
				}
			}
			n, u, v = n+p.nearness.x, u+p.u.x, v+p.v.x
		}
	})
}

// at returns 256 times the density at a point in cells, mixed from the four around it.
func (s *shadow) at(x, y float64) uint32 {
	most := float64(s.across - 1)
	x, y = min(max(x-0.5, 0), most), min(max(y-0.5, 0), most)
	fixedX, fixedY := uint32(x*256), uint32(y*256)
	column, row := min(int(fixedX>>8), s.across-2), min(int(fixedY>>8), s.across-2)
	shareX, shareY := fixedX-uint32(column)<<8, fixedY-uint32(row)<<8
	d := s.density[row*s.across+column:]
	if d[0]|d[1]|d[s.across]|d[s.across+1] == 0 {
		return 0
	}
	above := uint32(d[0])*(256-shareX) + uint32(d[1])*shareX
	under := uint32(d[s.across])*(256-shareX) + uint32(d[s.across+1])*shareX
	return (above*(256-shareY) + under*shareY) >> 8
}
