package main

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// frameColours counts the colours of a screen in the form of X Window Dump, version 7
// (XWDFile.h of the X Window System), with 24 or 32 bits a pixel. Xvfb keeps its screen
// so in the folder of -fbdir, where it can be looked at without asking the server.
func frameColours(dump []byte) (int, error) {
	const fields, entrySize = 25, 12
	if len(dump) < 4*fields {
		return 0, errors.New("read the screen: there is none yet")
	}
	field := func(i int) int { return int(binary.BigEndian.Uint32(dump[4*i:])) }
	headerSize, version, width, height := field(0), field(1), field(4), field(5)
	greatestFirst, size, lineSize, entries := field(7) == 1, field(11)/8, field(12), field(19)
	if version != 7 || size != 3 && size != 4 {
		return 0, fmt.Errorf("read the screen: version %d with %d bytes a pixel, want 7 with 3 or 4", version, size)
	}
	begin := headerSize + entries*entrySize
	if lineSize < size*width || len(dump)-begin < height*lineSize {
		return 0, errors.New("read the screen: it is cut off")
	}
	spare := 0 // the byte of a pixel that is no colour comes first or last
	if size == 4 && greatestFirst {
		spare = 1
	}
	seen, count := make([]uint64, 1<<24/64), 0
	for y := range height {
		line := dump[begin+y*lineSize:]
		for x := range width {
			pixel := line[size*x+spare:]
			colour := uint32(pixel[0]) | uint32(pixel[1])<<8 | uint32(pixel[2])<<16
			if mark := uint64(1) << (colour % 64); seen[colour/64]&mark == 0 {
				seen[colour/64] |= mark
				count++
			}
		}
	}
	return count, nil
}
