package limits

// What a picture in pixels may hold; package render/artwork/raster.
const (
	// A JPEG file counts the pixels of a side in 16 bits.
	PictureSide = 65_535
	// The blank of a bag, 1400 × 1000 mm, has 195 million pixels at 300 ppi; twice that is
	// enough for any.
	PicturePixels = 400_000_000
	// Memory for decoding: 400 million pixels of four inks take 1.6 GB.
	PictureMemoryBytes = 2048 * mebibyte
	// A screen shows no more, so what is kept open is made smaller.
	PictureShownPixels = 16_000_000
	// Colour profiles of presses have some 2 MB.
	PictureProfileBytes = 16 * mebibyte
	// A colour profile has a dozen parts or two; package render/pdf/profile.
	ProfileParts = 1000
)
