package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/png"
	"os"
	"strconv"

	"golang.org/x/image/draw"
)

// iconID is the name by which a desktop knows the program and its icon.
const iconID = "net.gussetwright.app"

// The sizes of the icon in pixels that a Linux desktop looks for, and Windows.
var (
	linuxIconSizes   = []int{16, 24, 32, 48, 64, 128, 256, 512}
	windowsIconSizes = []int{16, 24, 32, 48, 64, 128, 256}
)

// readIcon reads the icon of the program at its largest.
func readIcon(m *machine) (image.Image, error) {
	data, err := os.ReadFile(m.path("assets", "icon", "gussetwright.png"))
	if err != nil {
		return nil, fmt.Errorf("read the icon: %w", err)
	}
	icon, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, fmt.Errorf("read the icon: %w", err)
	}
	return icon, nil
}

// scaledIcon returns the icon at a size, as PNG.
func scaledIcon(icon image.Image, size int) ([]byte, error) {
	scaled := image.NewNRGBA(image.Rect(0, 0, size, size))
	draw.CatmullRom.Scale(scaled, scaled.Bounds(), icon, icon.Bounds(), draw.Src, nil)
	var data bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&data, scaled); err != nil {
		return nil, fmt.Errorf("draw the icon at %d pixels: %w", size, err)
	}
	return data.Bytes(), nil
}

// linuxIcons returns the icon in the sizes of a Linux desktop, and as it was drawn, in
// the folders of the icon theme that programs add to.
func linuxIcons(m *machine) ([]member, error) {
	icon, err := readIcon(m)
	if err != nil {
		return nil, err
	}
	const theme = "share/icons/hicolor/"
	vector, err := fromDisk(theme+"scalable/apps/"+iconID+".svg", readable, m.path("assets", "icon", "gussetwright.svg"))
	if err != nil {
		return nil, err
	}
	all := []member{vector}
	for _, size := range linuxIconSizes {
		data, err := scaledIcon(icon, size)
		if err != nil {
			return nil, err
		}
		side := strconv.Itoa(size)
		all = append(all, member{theme + side + "x" + side + "/apps/" + iconID + ".png", readable, data})
	}
	return all, nil
}

// The parts of an ICO file: a head, an entry for each picture, and the pictures, which
// are PNG files as Windows reads them since Vista.
type (
	iconHead  struct{ Reserved, Type, Count uint16 }
	iconEntry struct {
		Width, Height, Colours, Reserved byte // a width of 256 is written as 0
		Planes, Bits                     uint16
		Size, Offset                     uint32
	}
)

// windowsIcon returns the icon as an ICO file.
func windowsIcon(icon image.Image) ([]byte, error) {
	head := iconHead{Type: 1, Count: uint16(len(windowsIconSizes))}
	offset := binary.Size(head) + len(windowsIconSizes)*binary.Size(iconEntry{})
	var entries, pictures bytes.Buffer
	for _, size := range windowsIconSizes {
		data, err := scaledIcon(icon, size)
		if err != nil {
			return nil, err
		}
		entry := iconEntry{Width: byte(size), Height: byte(size), Planes: 1, Bits: 32, Size: uint32(len(data)), Offset: uint32(offset + pictures.Len())}
		if err := binary.Write(&entries, binary.LittleEndian, entry); err != nil {
			return nil, fmt.Errorf("write the icon for Windows: %w", err)
		}
		pictures.Write(data)
	}
	var whole bytes.Buffer
	if err := binary.Write(&whole, binary.LittleEndian, head); err != nil {
		return nil, fmt.Errorf("write the icon for Windows: %w", err)
	}
	whole.Write(entries.Bytes())
	whole.Write(pictures.Bytes())
	return whole.Bytes(), nil
}
