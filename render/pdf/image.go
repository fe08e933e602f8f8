package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
)

// images are the pictures of a document; equal ones stand in it once.
type images struct {
	file  *file
	known map[[sha256.Size]byte]reference
	names map[reference]name
}

func newImages(file *file) *images {
	return &images{file, map[[sha256.Size]byte]reference{}, map[reference]name{}}
}

// add returns the name and the number of an image. quality is that of JPEG, or 0 for
// no loss; what shines through does so without loss either way.
func (i *images) add(picture image.Image, quality int) (entry, error) {
	colours, alpha := planes(picture)
	object, err := pack(colours, quality)
	if err != nil {
		return entry{}, err
	}
	if alpha != nil {
		mask, err := pack(alpha, 0)
		if err != nil {
			return entry{}, err
		}
		object.Dict = append(object.Dict, entry{"SMask", i.store(mask)})
	}
	number := i.store(object)
	if i.names[number] == "" {
		i.names[number] = name(fmt.Sprintf("Image%d", len(i.names)+1))
	}
	return entry{i.names[number], number}, nil
}

func (i *images) store(object plain) reference {
	key := sha256.Sum256(object.AppendTo(nil))
	if i.known[key] == 0 {
		i.known[key] = i.file.add(object)
	}
	return i.known[key]
}

// planes parts an image into opaque colours, in grey where it has no others, and its
// alpha, which is nil where it is opaque.
func planes(picture image.Image) (colours image.Image, alpha *image.Gray) {
	size := image.Rectangle{Max: picture.Bounds().Size()}
	if picture, ok := picture.(*image.RGBA); ok && picture.Opaque() && !isGrey(picture) {
		return picture, nil // as it is: JPEG packs that kind fast
	}
	full := image.NewNRGBA(size)
	draw.Draw(full, size, picture, picture.Bounds().Min, draw.Src)
	grey, mask := image.NewGray(size), image.NewGray(size)
	isGrey, isOpaque := true, true
	for at := range grey.Pix {
		pixel := full.Pix[4*at : 4*at+4]
		grey.Pix[at], mask.Pix[at] = pixel[0], pixel[3]
		isGrey = isGrey && pixel[0] == pixel[1] && pixel[1] == pixel[2]
		isOpaque = isOpaque && pixel[3] == 255
		pixel[3] = 255
	}
	colours = full
	if isGrey {
		colours = grey
	}
	if isOpaque {
		return colours, nil
	}
	return colours, mask
}

// isGrey tells whether no pixel has a hue.
func isGrey(picture *image.RGBA) bool {
	for i := 0; i+3 < len(picture.Pix); i += 4 {
		if picture.Pix[i] != picture.Pix[i+1] || picture.Pix[i] != picture.Pix[i+2] {
			return false
		}
	}
	return true
}

// pack returns an opaque image as the object of a file (ISO 32000-1, 8.9.5).
func pack(picture image.Image, quality int) (plain, error) {
	space, channels := name("DeviceRGB"), 3
	if picture.ColorModel() == color.GrayModel {
		space, channels = name("DeviceGray"), 1
	}
	size := picture.Bounds().Size()
	head := dict{
		{"Type", name("XObject")},
		{"Subtype", name("Image")},
		{"Width", integer(size.X)},
		{"Height", integer(size.Y)},
		{"ColorSpace", space},
		{"BitsPerComponent", integer(8)},
	}
	var packed bytes.Buffer
	if quality > 0 {
		if err := jpeg.Encode(&packed, picture, &jpeg.Options{Quality: quality}); err != nil {
			return plain{}, fmt.Errorf("pack a picture of %d × %d pixels: %w", size.X, size.Y, err)
		}
		return plain{append(head, entry{"Filter", name("DCTDecode")}), packed.Bytes()}, nil
	}
	if err := png.Encode(&packed, picture); err != nil {
		return plain{}, fmt.Errorf("pack a picture of %d × %d pixels: %w", size.X, size.Y, err)
	}
	head = append(head, entry{"Filter", name("FlateDecode")}, entry{"DecodeParms", dict{
		{"Predictor", integer(anyPNGPredictor)},
		{"Colors", integer(channels)},
		{"BitsPerComponent", integer(8)},
		{"Columns", integer(size.X)},
	}})
	return plain{head, pixelData(packed.Bytes())}, nil
}

// anyPNGPredictor says that each row names the PNG filter it was packed with (ISO
// 32000-1, 7.4.4.4).
const anyPNGPredictor = 15

// pixelData returns the pixels of a PNG file that we wrote, still packed: PDF packs
// them in the same way. A file is a signature and chunks of length, name, data and
// checksum (PNG specification, 5.3).
func pixelData(file []byte) []byte {
	const signature, around = 8, 12
	var data []byte
	for rest := file[signature:]; len(rest) >= around; {
		size := int(rest[0])<<24 | int(rest[1])<<16 | int(rest[2])<<8 | int(rest[3])
		if string(rest[4:8]) == "IDAT" {
			data = append(data, rest[8:8+size]...)
		}
		rest = rest[around+size:]
	}
	return data
}
