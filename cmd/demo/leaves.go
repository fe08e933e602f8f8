package main

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"math"
)

// pixelsPerMM of the pattern: 300 to the inch.
const pixelsPerMM = 300 / 25.4

// drawLeaves draws a pattern of leaves that joins itself on all sides: a square of the
// given side in mm, black on nothing, so that the ground prints through.
func drawLeaves(side float64) ([]byte, error) {
	size := int(math.Round(side * pixelsPerMM))
	leaves := []struct{ x, y, turn, long float64 }{
		{0.22, 0.2, 0.6, 0.2}, {0.7, 0.33, 2.2, 0.17}, {0.45, 0.62, -0.7, 0.22}, {0.9, 0.82, 0.9, 0.18}, {0.1, 0.75, 2.7, 0.15},
	}
	var rows []byte // each a filter, none, and pairs of grey and alpha
	for y := range size {
		rows = append(rows, 0)
		for x := range size {
			most := 0.0
			for _, l := range leaves {
				most = max(most, onLeaf(nearest((float64(x)+0.5)/float64(size)-l.x), nearest((float64(y)+0.5)/float64(size)-l.y), l.turn, l.long, 1/float64(size)))
			}
			rows = append(rows, 20, uint8(90*most+0.5))
		}
	}
	return greyPNG(size, rows)
}

// nearest returns the distance to the nearest of the copies that stand one side apart.
func nearest(d float64) float64 { return d - math.Round(d) }

// onLeaf returns how much of a pixel a leaf covers: a lens between two arcs, with a
// vein left free.
func onLeaf(x, y, turn, long, pixel float64) float64 {
	sin, cos := math.Sincos(turn)
	along, across := x*cos+y*sin, math.Abs(y*cos-x*sin)
	edge := 0.32 * long * (1 - 4*along*along/(long*long))
	vein := 0.035 * long
	inside := min(edge-across, across-vein)
	if along > 0.42*long {
		inside = edge - across
	}
	return min(max(inside/pixel+0.5, 0), 1)
}

// greyPNG returns a square PNG picture of grey with alpha at the resolution of the
// pattern, from its rows (the chunks IHDR, pHYs, IDAT and IEND of the PNG
// specification). The standard library writes such a picture in RGB only, which a
// printer would have to convert.
func greyPNG(size int, rows []byte) ([]byte, error) {
	var packed bytes.Buffer
	compressor := zlib.NewWriter(&packed)
	if _, err := compressor.Write(rows); err != nil {
		return nil, err
	}
	if err := compressor.Close(); err != nil {
		return nil, err
	}
	numbers := func(values ...uint32) (data []byte) {
		for _, v := range values {
			data = binary.BigEndian.AppendUint32(data, v)
		}
		return data
	}
	out := []byte("\x89PNG\r\n\x1a\n")
	chunk := func(name string, data []byte) {
		out = append(out, numbers(uint32(len(data)))...)
		body := append([]byte(name), data...)
		out = append(append(out, body...), numbers(crc32.ChecksumIEEE(body))...)
	}
	const greyAlpha = 4
	perMetre := uint32(math.Round(pixelsPerMM * 1000))
	chunk("IHDR", append(numbers(uint32(size), uint32(size)), 8, greyAlpha, 0, 0, 0))
	chunk("pHYs", append(numbers(perMetre, perMetre), 1))
	chunk("IDAT", packed.Bytes())
	chunk("IEND", nil)
	return out, nil
}
