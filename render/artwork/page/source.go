package page

import (
	"bytes"
	"errors"
	"io"
	"strconv"

	"github.com/pdfcpu/pdfcpu/pkg/filter"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// source reads objects of a copy as PDFium writes it: one table of where the objects
// stand, nothing encrypted, no object within a stream. Anything else is an error,
// since the copy is not the file that someone gave us.
type source struct {
	data    []byte
	offsets map[object.Reference]int
	trailer object.Dict
	read    map[object.Reference]object.Object // what was read before
	left    int                                // values that may still be read
}

func newSource(data []byte) (*source, error) {
	s := &source{
		data: data, offsets: map[object.Reference]int{},
		read: map[object.Reference]object.Object{}, left: mostValues,
	}
	at := bytes.LastIndex(data, []byte("startxref"))
	if at < 0 {
		return nil, phrase.Errorf("no table of the objects")
	}
	l := s.lexer(at)
	l.next()
	if at = l.number(); at < 0 || at >= len(data) {
		return nil, phrase.Errorf("the table of the objects is said to stand at byte %d", at)
	}
	return s, s.table(s.lexer(at))
}

func (s *source) lexer(at int) *lexer { return &lexer{s.data, at, &s.left} }

// number reads a whole number, or −1.
func (l *lexer) number() int {
	n, err := strconv.Atoi(string(l.text(l.next())))
	if err != nil || n < 0 {
		return -1
	}
	return n
}

// table reads where the objects stand (ISO 32000-1, 7.5.4), and the trailer.
func (s *source) table(l *lexer) error {
	if string(l.text(l.next())) != "xref" {
		return phrase.Errorf("the table of the objects has another form")
	}
	for {
		t := l.next()
		if string(l.text(t)) == "trailer" {
			break
		}
		l.at = t.from
		first, count := l.number(), l.number()
		if first < 0 || count < 0 {
			return phrase.Errorf("the table of the objects is damaged")
		}
		for i := range count {
			offset := l.number()
			l.number()
			used := l.next()
			if offset < 0 || used.kind != word {
				return phrase.Errorf("the table of the objects is damaged")
			}
			if string(l.text(used)) == "n" && offset < len(s.data) {
				s.offsets[object.Reference(first+i)] = offset
			}
		}
	}
	trailer, err := l.value(0)
	s.trailer, _ = trailer.(object.Dict)
	return err
}

// object returns what stands under a number; nothing is null.
func (s *source) object(number object.Reference) (object.Object, error) {
	if known, is := s.read[number]; is {
		return known, nil
	}
	offset, is := s.offsets[number]
	if !is {
		return object.Null{}, nil
	}
	s.read[number] = object.Null{} // for a length that is said to stand in itself
	value, err := s.objectAt(offset, number)
	if err != nil {
		return nil, phrase.Errorf("object %d: %s", number, err)
	}
	s.read[number] = value
	return value, nil
}

func (s *source) objectAt(offset int, number object.Reference) (object.Object, error) {
	l := s.lexer(offset)
	if l.number() != int(number) || l.number() < 0 || string(l.text(l.next())) != "obj" {
		return nil, phrase.Errorf("it does not stand where the table says")
	}
	value, err := l.value(0)
	if err != nil {
		return nil, err
	}
	head, isDict := value.(object.Dict)
	if !isDict || string(l.text(l.next())) != "stream" {
		return value, nil
	}
	if l.peek() == '\r' {
		l.at++
	}
	if l.peek() == '\n' {
		l.at++
	}
	length := s.whole(head.Get("Length"), -1)
	if length < 0 || length > len(s.data)-l.at {
		return nil, phrase.Errorf("its length is said to be %d bytes", length)
	}
	return object.Plain{Dict: head, Data: s.data[l.at : l.at+length : l.at+length]}, nil
}

// resolve returns the object itself where a reference stands, and null where it
// cannot be read.
func (s *source) resolve(o object.Object) object.Object {
	for range deepestTree {
		reference, is := o.(object.Reference)
		if !is {
			break
		}
		value, err := s.object(reference)
		if err != nil {
			return object.Null{}
		}
		o = value
	}
	return o
}

func (s *source) dict(o object.Object) object.Dict {
	switch o := s.resolve(o).(type) {
	case object.Dict:
		return o
	case object.Plain:
		return o.Dict
	}
	return nil
}

func (s *source) array(o object.Object) object.Array {
	list, _ := s.resolve(o).(object.Array)
	return list
}

func (s *source) name(o object.Object) object.Name {
	n, _ := s.resolve(o).(object.Name)
	return n
}

func (s *source) number(o object.Object) (float64, bool) {
	if n, is := s.resolve(o).(numeral); is {
		v, err := strconv.ParseFloat(string(n), 64)
		return v, err == nil
	}
	return 0, false
}

// whole returns a whole number, or what is usual where there is none.
func (s *source) whole(o object.Object, usual int) int {
	v, is := s.number(o)
	if !is || v < -1<<31 || v > 1<<31 {
		return usual
	}
	return int(v)
}

var errUnpacked = phrase.Errorf("the drawing operators of the page unpack to more than %d MB; simplify the drawing, or turn it into a picture", mostContent>>20)

// unpack returns the data of a stream without its filters, at most so many bytes.
// Where data is damaged, what came before the damage is returned, as readers show it.
func (s *source) unpack(stream object.Plain, most int) ([]byte, error) {
	filters := s.each(stream.Dict.Get("Filter"))
	parameters := s.each(stream.Dict.Get("DecodeParms"))
	data := stream.Data
	for i, f := range filters {
		settings := map[string]int{}
		if i < len(parameters) {
			for _, e := range s.dict(parameters[i]) {
				settings[string(e.Key)] = s.whole(e.Value, 0)
			}
		}
		if settings["Columns"] > mostUnits || settings["Colors"] > 32 || settings["BitsPerComponent"] > 16 {
			return nil, phrase.Errorf("the rows of packed operators are too long")
		}
		unpacker, err := filter.NewFilter(string(s.name(f)), settings, int64(most))
		if err != nil {
			return nil, err
		}
		if data, err = unpackOnce(unpacker, data); err != nil {
			return nil, err
		}
	}
	if len(data) > most {
		return nil, errUnpacked
	}
	return data, nil
}

func unpackOnce(unpacker filter.Filter, data []byte) ([]byte, error) {
	unpacked, err := unpacker.Decode(bytes.NewReader(data))
	switch buffer, is := unpacked.(*bytes.Buffer); {
	case errors.Is(err, filter.ErrDecodeLimitExceeded):
		return nil, errUnpacked
	case is && buffer != nil && (err == nil || buffer.Len() > 0):
		return buffer.Bytes(), nil
	case err != nil:
		return nil, err
	}
	return io.ReadAll(unpacked)
}

// each returns the elements of an array, or the one object that stands for one.
func (s *source) each(o object.Object) object.Array {
	switch o := s.resolve(o).(type) {
	case object.Array:
		return o
	case nil, object.Null:
		return nil
	default:
		return object.Array{o}
	}
}
