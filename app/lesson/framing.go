package lesson

import (
	"gussetwright/app/folding"
	"gussetwright/geometry"
	"gussetwright/render/solid"
)

// box is a part of space.
type box struct{ least, greatest geometry.Vec3 }

const (
	// perStage is the number of steps of a stage at which it is known what the picture
	// takes in.
	perStage = 24
	// comingOver is the share of a stage in which its view comes over from the last.
	comingOver = 0.6
)

// camera returns from where a place is best seen: that of its stage, once the view has
// come over from the stage before.
func (c *course) camera(p place) solid.Camera {
	own := c.sights[p.stage].Camera
	if p.stage == 0 {
		return own
	}
	return folding.Toward(c.sights[p.stage-1].Camera, own, eased(p.share/comingOver))
}

// box returns what the picture takes in at a place.
func (c *course) box(p place) box {
	c.framing.Do(c.reckonBoxes)
	boxes := c.boxes[p.stage]
	at := p.share * perStage
	before := min(int(at), perStage-1)
	return boxes[before].toward(boxes[before+1], at-float64(before))
}

// frame returns the frame around a box.
func (b box) frame() solid.Frame {
	across := geometry.Vec2{X: b.greatest.X - b.least.X, Y: b.greatest.Y - b.least.Y}
	return solid.Frame{Middle: b.least.Mid(b.greatest), Radius: across.Length() / 2, Rise: (b.greatest.Z - b.least.Z) / 2}
}

// reckonBoxes finds boxes that hold what is to be seen of the motion and change slowly:
// each is the mean of its neighbours once these were widened by theirs. Where a stage
// ends the box is no larger than what is seen then, so that the work fills the picture
// while one looks at it.
func (c *course) reckonBoxes() {
	seen := make([][]box, len(c.Stages))
	for stage := range c.Stages {
		for i := range perStage + 1 {
			seen[stage] = append(seen[stage], c.seen(place{stage, float64(i) / perStage}))
		}
	}
	for stage := range seen[1:] { // what comes into the picture is there already
		end, begin := &seen[stage][perStage], &seen[stage+1][0]
		both := end.union(*begin)
		*end, *begin = both, both
	}
	for _, boxes := range seen {
		wide := overNeighbours(boxes, func(near []box) box {
			all := near[0]
			for _, b := range near[1:] {
				all = all.union(b)
			}
			return all
		})
		means := overNeighbours(wide, func(near []box) (mean box) {
			for _, b := range near {
				mean.least, mean.greatest = mean.least.Add(b.least), mean.greatest.Add(b.greatest)
			}
			share := 1 / float64(len(near))
			return box{mean.least.Scale(share), mean.greatest.Scale(share)}
		})
		for i := range means {
			means[i] = means[i].union(boxes[i])
		}
		c.boxes = append(c.boxes, means)
	}
}

// overNeighbours replaces every box by what of makes of it and those near it, fewer
// toward both ends, where none but the box itself counts.
func overNeighbours(boxes []box, of func([]box) box) []box {
	const most = perStage / 4
	var made []box
	for i := range boxes {
		reach := min(most, i, len(boxes)-1-i)
		made = append(made, of(boxes[i-reach:i+reach+1]))
	}
	return made
}

// seen returns the box around what is to be seen at a place. What is looked at from near
// comes near as the stage begins, and the next stage goes back from it.
func (c *course) seen(p place) box {
	whole, near := c.around(p)
	coming := eased(p.share / comingOver)
	switch {
	case c.sights[p.stage].Near:
		return whole.toward(near, coming)
	case p.stage > 0 && c.sights[p.stage-1].Near:
		return near.toward(whole, coming)
	}
	return whole
}

// cordShown is how much of a cord is seen above the paper in stages that are not about
// it, as a share of the height of the paper.
const cordShown = 0.2

// around returns the boxes around the bag at a place, and around the part that is looked
// at from near.
func (c *course) around(p place) (whole, near box) {
	body := c.body(p)
	near.least, near.greatest = folding.Part(&body)
	whole.least, whole.greatest = body.Bounds()
	if !c.sights[p.stage].Cords {
		body.Cords = nil
		least, greatest := body.Bounds()
		reach := cordShown * (greatest.Z - least.Z)
		whole.greatest.Z = min(whole.greatest.Z, greatest.Z+reach)
		whole.least.Z = max(whole.least.Z, least.Z-reach)
	}
	for i := range body.Cards {
		for _, corner := range body.Cards[i].Points {
			whole = whole.union(box{corner, corner})
		}
	}
	return whole, near
}

func (b box) union(o box) box {
	return box{
		geometry.Vec3{X: min(b.least.X, o.least.X), Y: min(b.least.Y, o.least.Y), Z: min(b.least.Z, o.least.Z)},
		geometry.Vec3{X: max(b.greatest.X, o.greatest.X), Y: max(b.greatest.Y, o.greatest.Y), Z: max(b.greatest.Z, o.greatest.Z)},
	}
}

// toward returns the box a share of the way to another.
func (b box) toward(o box, share float64) box {
	mix := func(a, b geometry.Vec3) geometry.Vec3 { return a.Add(b.Sub(a).Scale(share)) }
	return box{mix(b.least, o.least), mix(b.greatest, o.greatest)}
}
