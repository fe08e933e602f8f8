package project

// limits bound what one file may ask of the reader. They hold for saving too, so
// that whatever is saved can be opened again.
type limits struct {
	document  int64 // bytes of bag.json
	entries   int   // entries of the container
	directory int64 // bytes of the table of contents of the container
	file      int64 // unpacked bytes of one artwork file or of the preview
	total     int64 // unpacked bytes of the whole container
	ratio     int64 // unpacked bytes for each packed byte of one entry
	free      int64 // unpacked bytes of one entry to which ratio does not apply
}

const mebibyte = 1 << 20

// standard returns the limits that every reader and writer uses; tests pass
// smaller ones.
func standard() limits {
	return limits{
		// The longest valid bag.json is some 30 KiB. A megabyte leaves room for
		// blanks and newer entries and is still read in an instant.
		document: mebibyte,
		// A bag carries at most 64 pieces of artwork; bag.json, the preview and
		// the folder itself come on top.
		entries: 72,
		// Each of the entries takes less than 1 KiB in the table of contents, to
		// which the end record with the longest comment, 64 KiB, is added.
		directory: mebibyte / 4,
		// A print-ready PDF with pictures at 300 dpi for the largest sheet is
		// rarely above 100 MiB. Everything is held in memory while it is open.
		file:  128 * mebibyte,
		total: 256 * mebibyte,
		// Deflate never packs more than about 1030 to 1 (zlib technical notes).
		// Text and flat pictures reach 20 to 100; only bombs come near the top.
		ratio: 200,
		// A flat picture of less than this harms nobody, however well it packs.
		free: mebibyte,
	}
}

// container returns the most bytes that a whole file can need.
func (l limits) container() int64 { return l.total + l.directory + mebibyte }

const (
	deepestNesting   = 16  // bag.json needs four levels
	mostComplaints   = 50  // nobody mends more before trying again
	longestShown     = 60  // characters of a value or a key in a message
	longestEntryName = 160 // bytes; file systems allow 255, and exported names get longer
)
