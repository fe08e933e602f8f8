package limits

// What a project file may hold; package app/project. They hold for saving too, so that
// whatever is saved can be opened again.
const (
	// The longest valid bag.json is some 30 KiB; a megabyte leaves room for blanks and
	// newer entries and is still read in an instant.
	ProjectDocumentBytes = mebibyte
	// A bag carries at most 64 pieces of artwork; bag.json, the preview, the profile and
	// the folder itself come on top.
	ProjectEntries = 72
	// Each of the entries takes less than 1 KiB in the table of contents, to which the end
	// record with the longest comment, 64 KiB, is added.
	ProjectDirectoryBytes = mebibyte / 4
	// A print-ready PDF with pictures at 300 dpi for the largest sheet is rarely above 100
	// MiB, and everything is held in memory while it is open.
	ProjectArtworkBytes = 128 * mebibyte
	// Twice the largest single file, for a whole project unpacked.
	ProjectBytes = 256 * mebibyte
	// Deflate never packs more than about 1030 to 1 (zlib technical notes); text and flat
	// pictures reach 20 to 100, and only bombs come near the top.
	ProjectPackingRatio = 200
	// A flat picture of less than this harms nobody, however well it packs, so the ratio
	// begins here.
	ProjectRatioFreeBytes = mebibyte
	// A copy of unsaved work is bag.json with the names of at most 64 pieces of artwork and
	// what they are called beside it.
	ProjectCopyBytes = 2 * mebibyte
	// File systems allow 255 bytes, and the names of exported files are longer.
	ProjectNameBytes = 160
	// The document needs four levels of braces and brackets.
	ProjectNesting = 16
	// Nobody mends more entries before trying again.
	ProjectComplaints = 50
)
