package limits

// What an SVG drawing may hold; package render/artwork/vector.
const (
	// Four times what the largest illustrations have that are drawn by hand; larger ones
	// hold traced or embedded pictures.
	DrawingBytes = 32 * mebibyte
	// They take some 100 MB in memory.
	DrawingElements = 200_000
	// Ten of each element, which take some 100 MB in memory.
	DrawingAttributes = 10 * DrawingElements
	// Several times as deep as drawing programs nest their groups.
	DrawingDepth = 256
	// Symbols within symbols within symbols; deeper is a loop or a trap.
	DrawingUses = 32
	// Groups with an opacity within each other take a picture of their own each while they
	// are drawn.
	DrawingGroups = 32
	// Groups and drawings with a clip within each other take a quarter as much each.
	DrawingClips = 64
	// All shapes, with every use written out, are held in memory at once.
	DrawingShapes = 500_000
	// All lines and curves, with every use written out, take some 250 MB.
	DrawingSegments = 5_000_000
	// Lines and curves of a single path, which is flattened in one go.
	DrawingPathSegments = 1_000_000
	// All embedded images together; one of 700 × 480 mm at 300 ppi has 47 million pixels.
	DrawingImagePixels = 64 << 20
	// Selectors of styles: each class of its own that a drawing program writes makes one.
	DrawingRules = 50_000
	// The work that all uses may cause, in about the bytes of what they repeat. It ends
	// files whose symbols double what they show at each level.
	DrawingEffort = 1 << 29
	// A drawing is rendered to 1 GB at most.
	DrawingRenderedPixels = 256 << 20
	// Dashes of one part of a path, more than the pixels along the edge of any picture;
	// beyond, it is drawn solid, as the gaps cannot be seen.
	DrawingDashes = 100_000
	// Millimetres from the origin; readers of PDF files keep numbers with seven digits, so
	// nothing is exact out there.
	DrawingFarthest = 1e7
	// Millimetres of a side, 100 m.
	DrawingLongest = 100_000
)
