package page

import "time"

// Limits that keep a file, however it was made, from taking all memory or time.
const (
	// mostBytes is the largest file that is read: the largest artwork for a bag is
	// some 190 MB (700 × 480 mm at 300 ppi in CMYK, not packed at all).
	mostBytes = 512 << 20
	// mostCopied bounds the copy that PDFium writes, which unpacks nothing but may
	// write object streams out.
	mostCopied = 2 * mostBytes
	// mostContent bounds what all drawing operators of a page unpack to. A map with
	// a million points has some 30 MB.
	mostContent = 128 << 20
	// mostObjects bounds the objects that are taken along with a page.
	mostObjects = 200_000
	// mostValues bounds the numbers, names and other values in them.
	mostValues = 4_000_000
	// mostRules bounds the rules that say whether layers are hidden.
	mostRules = 100_000
	// deepest bounds how deep arrays and dictionaries stand in each other; PDFium
	// itself stops at 64.
	deepest = 80
	// deepestTree bounds the levels of the page tree and of forms within forms.
	deepestTree = 32
	// mostLooked bounds how many objects on the page are measured.
	mostLooked = 20_000
	// mostListed bounds the list of pictures, and of names in notes.
	mostListed = 1000

	// mostUnits is the longest side of a page in units of its own (ISO 32000-1,
	// annex C.2, and 14.11.2 for the boxes).
	mostUnits = 14_400
	// mostLength is the longest side of the placed area, 100 m. UserUnit may make a
	// unit longer than a point.
	mostLength = 100_000.0
	// leastLength is the shortest side of the placed area: anything smaller is a
	// damaged box.
	leastLength = 0.5
	// mostPixels bounds the picture that is drawn: 64 megapixels, a bag of
	// 700 × 480 mm at 300 ppi with room to spare. PDFium holds 4 bytes for each.
	mostPixels = 64 << 20

	// memoryPages is the memory of one call of PDFium in units of 64 KiB: 1 GiB.
	memoryPages = 1 << 14
	// atOnce is how many calls run at a time; each may take the memory above.
	atOnce = 2

	// readTime and drawTime end a call even where the caller set no time.
	readTime = 30 * time.Second
	drawTime = 60 * time.Second
)
