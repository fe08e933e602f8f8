package geometry

// CutLeft returns the part of a closed shape of straight edges that lies to the left
// of a line, seen along it: nothing where none does. Of a shape that is not convex
// the parts may be joined along the line. The line goes through from along a vector
// of any length but 0.
func CutLeft(shape []Vec2, from, along Vec2) []Vec2 {
	var kept []Vec2
	for i, a := range shape {
		b := shape[(i+1)%len(shape)]
		before, after := along.Cross(a.Sub(from)), along.Cross(b.Sub(from))
		if before >= 0 {
			kept = append(kept, a)
		}
		if (before >= 0) != (after >= 0) {
			kept = append(kept, a.Add(b.Sub(a).Scale(before/(before-after))))
		}
	}
	return kept
}
