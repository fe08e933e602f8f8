package profile

import (
	"encoding/binary"
	"math"
)

// The primaries of sRGB as seen under D50, to which Bradford's matrix takes them,
// and D50 itself, in XYZ (IEC 61966-2-1 and ICC.1:2004-10; values from memory).
var (
	red   = [3]float64{0.43607, 0.22249, 0.01392}
	green = [3]float64{0.38515, 0.71687, 0.09708}
	blue  = [3]float64{0.14307, 0.06061, 0.71410}
	d50   = [3]float64{0.9642, 1, 0.8249}
)

// curveSteps is how finely the curve is told, as finely as 8 bits can use.
const curveSteps = 1024

// SRGB returns a profile of the colour space sRGB, the same bytes every time.
func SRGB() []byte {
	tone := curve()
	parts := []struct {
		names []string
		data  []byte
	}{
		{[]string{"desc"}, description("sRGB")},
		{[]string{"cprt"}, append([]byte("text\x00\x00\x00\x00"), "Public domain\x00"...)},
		{[]string{"wtpt"}, place(d50)},
		{[]string{"rXYZ"}, place(red)},
		{[]string{"gXYZ"}, place(green)},
		{[]string{"bXYZ"}, place(blue)},
		{[]string{"rTRC", "gTRC", "bTRC"}, tone},
	}
	const tags = 9
	var table, body []byte
	start := headSize + 4 + tags*tagSize
	for _, part := range parts {
		for _, name := range part.names {
			table = append(table, name...)
			table = binary.BigEndian.AppendUint32(table, uint32(start+len(body)))
			table = binary.BigEndian.AppendUint32(table, uint32(len(part.data)))
		}
		body = append(body, part.data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	data := head(start + len(body))
	data = binary.BigEndian.AppendUint32(data, tags)
	return append(append(data, table...), body...)
}

// head is the head of a profile of a screen, version 2.1.
func head(size int) []byte {
	data := make([]byte, headSize)
	binary.BigEndian.PutUint32(data, uint32(size))
	binary.BigEndian.PutUint32(data[versionAt:], 0x02100000)
	copy(data[classAt:], "mntrRGB XYZ ")
	for i, part := range []uint16{2026, 1, 1} { // a day that stays the same
		binary.BigEndian.PutUint16(data[24+2*i:], part)
	}
	copy(data[signatureAt:], "acsp")
	copy(data[68:], place(d50)[8:])
	return data
}

// description is a text of version 2, with its empty parts for other scripts.
func description(text string) []byte {
	data := []byte("desc\x00\x00\x00\x00")
	data = binary.BigEndian.AppendUint32(data, uint32(len(text)+1))
	data = append(append(data, text...), 0)
	return append(data, make([]byte, 4+4+2+1+67)...)
}

func place(xyz [3]float64) []byte {
	data := []byte("XYZ \x00\x00\x00\x00")
	for _, value := range xyz {
		data = binary.BigEndian.AppendUint32(data, uint32(math.Round(value*65536)))
	}
	return data
}

// curve is the way from the value of a channel to light (IEC 61966-2-1; value from
// memory).
func curve() []byte {
	data := []byte("curv\x00\x00\x00\x00")
	data = binary.BigEndian.AppendUint32(data, curveSteps)
	for i := range curveSteps {
		value := float64(i) / (curveSteps - 1)
		light := value / 12.92
		if value > 0.04045 {
			light = math.Pow((value+0.055)/1.055, 2.4)
		}
		data = binary.BigEndian.AppendUint16(data, uint16(math.Round(light*65535)))
	}
	return data
}
