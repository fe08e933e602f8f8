package raster

import "bytes"

// runs unpacks PackBits (TIFF 6.0, section 9): a count n of 0 to 127 stands before
// n + 1 bytes as they are, one of −1 to −127 before a byte that comes 1 − n times.
type runs struct {
	from   *bytes.Reader
	same   bool
	value  byte
	remain int
}

func (r *runs) Read(b []byte) (n int, err error) {
	for n < len(b) {
		if r.remain == 0 {
			if err := r.next(); err != nil {
				return n, err
			}
			continue
		}
		value := r.value
		if !r.same {
			if value, err = r.from.ReadByte(); err != nil {
				return n, err
			}
		}
		b[n] = value
		n, r.remain = n+1, r.remain-1
	}
	return n, nil
}

// next reads a count.
func (r *runs) next() error {
	count, err := r.from.ReadByte()
	if err != nil {
		return err
	}
	switch signed := int(int8(count)); {
	case signed >= 0:
		r.same, r.remain = false, signed+1
	case signed > -128:
		r.same, r.remain = true, 1-signed
		r.value, err = r.from.ReadByte()
	}
	return err
}
