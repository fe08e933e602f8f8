package limits

// What a page of PDF artwork may hold; package render/artwork/page, which reads it in a
// sandbox.
const (
	// The largest artwork for a bag is some 190 MB: 700 × 480 mm at 300 ppi in CMYK, not
	// packed at all.
	PageBytes = 512 * mebibyte
	// The copy that PDFium writes unpacks nothing but may write object streams out.
	PageCopyBytes = 2 * PageBytes
	// A map with a million points has some 30 MB of drawing operators.
	PageContentBytes = 128 * mebibyte
	// Objects that are taken along with a page are held in memory at once.
	PageObjects = 200_000
	// Numbers, names and other values in them likewise.
	PageValues = 4_000_000
	// Rules that say whether layers are hidden; a drawing has one for each layer.
	PageRules = 100_000
	// PDFium itself stops at 64 arrays and dictionaries within each other.
	PageNesting = 80
	// Levels of the page tree and of forms within forms; deeper is a loop or a trap.
	PageTreeDepth = 32
	// Objects on the page whose sharpness is measured while the user waits.
	PageMeasured = 20_000
	// Pictures in the list, and names in notes; nobody reads more.
	PageListed = 1000
	// Units of a side (ISO 32000-1, annex C.2, and 14.11.2 for the boxes).
	PageUnits = 14_400
	// Millimetres of a side, 100 m: UserUnit may make a unit longer than a point.
	PageLongest = 100_000
	// A bag of 700 × 480 mm at 300 ppi has 47 million pixels; PDFium holds 4 bytes for each.
	PageRenderedPixels = 64 << 20
	// Memory of one call of PDFium, of which two run at a time.
	PageMemoryBytes = 1024 * mebibyte
	// Seconds after which reading ends, even where the caller set no time.
	PageReadSeconds = 30
	// Seconds after which drawing ends likewise.
	PageDrawSeconds = 60
)
