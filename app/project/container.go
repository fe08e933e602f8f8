package project

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"io"
	"io/fs"
	"strings"
	"unicode/utf8"

	"gussetwright/geometry/phrase"
)

// The entries of a container.
const (
	documentName  = "bag.json"
	previewName   = "preview.png"
	artworkFolder = "artwork/"
)

// isContainer tells from the first bytes whether a file is a ZIP container
// (signatures of the local file header and of the end record, PKWARE APPNOTE
// 4.3.7 and 4.3.16).
func isContainer(start []byte) bool {
	return bytes.HasPrefix(start, []byte("PK\x03\x04")) || bytes.HasPrefix(start, []byte("PK\x05\x06"))
}

// container reads a project from a ZIP container.
func (o opening) container(r io.ReaderAt, size int64) (Project, error) {
	if most := o.limits.container(); size > most {
		return Project{}, phrase.Errorf("the file has %s, more than the most, %s; take artwork out or make it smaller",
			byteSize(size), byteSize(most))
	}
	entries, err := o.entries(r, size)
	if err != nil {
		return Project{}, err
	}
	unpack := unpacker{limits: o.limits, left: o.limits.total}
	var p Project
	var unknown []string
	for _, entry := range entries {
		name := entry.Name
		switch artwork, isArtwork := strings.CutPrefix(name, artworkFolder); {
		case name == documentName:
			var data []byte
			if data, err = unpack.read(entry, o.limits.document); err == nil {
				p, err = o.document(data)
			}
		case name == previewName:
			p.Preview, err = unpack.read(entry, o.limits.file)
		case name == artworkFolder:
		case isArtwork && refuseFileName(artwork).Empty():
			p.Files[artwork], err = unpack.read(entry, o.limits.file)
		default:
			unknown = append(unknown, shown(name))
		}
		if err != nil {
			return Project{}, err
		}
	}
	if len(unknown) > 0 && !p.ReadOnly {
		return Project{}, phrase.Errorf("entry %s: a project file holds only bag.json, preview.png and artwork/NAME; take it out", someOf(unknown))
	}
	if len(unknown) > 0 {
		p.note("Not known to this version and left out: %s.", someOf(unknown))
	}
	p.noteMissing()
	return p, nil
}

// entries returns the table of contents with bag.json first, once every name and
// kind in it is known to be harmless.
func (o opening) entries(r io.ReaderAt, size int64) ([]*zip.File, error) {
	source := &meter{source: r, left: o.limits.directory}
	archive, err := zip.NewReader(source, size)
	if errors.Is(err, errSpent) {
		return nil, phrase.Errorf("the table of contents takes more than %s; take entries out", byteSize(o.limits.directory))
	}
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) { // names are checked below
		return nil, phrase.Errorf("the ZIP container is damaged or cut short (%s); take a backup copy", err)
	}
	source.open = true
	if len(archive.File) > o.limits.entries {
		return nil, phrase.Errorf("%d entries, more than the most, %d; take some out", len(archive.File), o.limits.entries)
	}
	var ordered []*zip.File
	seen := map[string]string{}
	for _, entry := range archive.File {
		if err := checkEntry(entry); err != nil {
			return nil, phrase.Errorf("entry %s: %s", shown(entry.Name), err)
		}
		if other, twice := seen[fold(entry.Name)]; twice {
			return nil, phrase.Errorf("entry %s: there is another with the name %s; keep one of them", shown(entry.Name), shown(other))
		}
		seen[fold(entry.Name)] = entry.Name
		if entry.Name == documentName {
			ordered = append([]*zip.File{entry}, ordered...)
		} else {
			ordered = append(ordered, entry)
		}
	}
	if len(ordered) == 0 || ordered[0].Name != documentName {
		return nil, phrase.Errorf("this ZIP container holds no bag.json at its top, so it is no project file; choose another file")
	}
	return ordered, nil
}

// Bits of the general purpose flag (PKWARE APPNOTE 4.4.4): encrypted, strongly
// encrypted, and masked for encryption of the table of contents.
const encrypted = 1<<0 | 1<<6 | 1<<13

// checkEntry refuses what a project file never holds, above all names that would
// leave the container if somebody unpacked it.
func checkEntry(entry *zip.File) error {
	name := entry.Name
	isFolder := name == artworkFolder
	switch {
	case !utf8.ValidString(name):
		return phrase.Errorf("the name is not UTF-8 text; rename the file")
	case len(name) > len(artworkFolder)+longestEntryName:
		return phrase.Errorf("the name is longer than %d bytes; shorten it", len(artworkFolder)+longestEntryName)
	case strings.Contains(name, `\`):
		return phrase.Errorf("backslash in the name; pack it again with a tool that writes forward slashes")
	case strings.Contains(name, ":"):
		return phrase.Errorf("colon in the name, as of a drive; pack the file without its drive")
	case strings.HasPrefix(name, "/"):
		return phrase.Errorf("absolute path; pack the file without its folder")
	case !isFolder && !fs.ValidPath(name):
		return phrase.Errorf(`the path has empty, "." or ".." parts; pack the file without its folder`)
	case entry.Flags&encrypted != 0:
		return phrase.Errorf("encrypted; pack the file without a password")
	case entry.Method != zip.Store && entry.Method != zip.Deflate:
		return phrase.Errorf("packed by method %d; pack it by deflate or not at all", entry.Method)
	case isFolder != entry.Mode().IsDir() || !isFolder && !entry.Mode().IsRegular():
		return phrase.Errorf("not a plain file (mode %s); put the file itself in its place", entry.Mode())
	}
	return nil
}

// unpacker reads entries within the limits. It counts what it really reads: sizes
// in headers are only claims.
type unpacker struct {
	limits limits
	left   int64 // bytes that may still be unpacked
}

func (u *unpacker) read(entry *zip.File, most int64) ([]byte, error) {
	fail := func(err error) ([]byte, error) {
		return nil, phrase.Errorf("entry %s: %s", shown(entry.Name), err)
	}
	inflated := int64(min(entry.CompressedSize64, uint64(u.limits.container()))) * u.limits.ratio
	inflated = max(inflated, u.limits.free)
	content, err := entry.Open()
	if err != nil {
		return fail(damaged(err))
	}
	defer content.Close()
	allowed := min(most, inflated, u.left)
	data, err := io.ReadAll(io.LimitReader(content, allowed+1))
	if int64(len(data)) <= allowed {
		if err != nil {
			return fail(damaged(err))
		}
		u.left -= int64(len(data))
		return data, nil
	}
	switch allowed {
	case most:
		err = phrase.Errorf("more than the most, %s; make the file smaller", byteSize(most))
	case u.left:
		err = phrase.Errorf("with it the container unpacks to more than the most, %s; take artwork out or make it smaller",
			byteSize(u.limits.total))
	default:
		err = phrase.Errorf("it unpacks to more than %d times its size, as only files made to do harm do; pack it without compression",
			u.limits.ratio)
	}
	return fail(err)
}

func damaged(cause error) error {
	var corrupt flate.CorruptInputError
	if errors.Is(cause, zip.ErrChecksum) || errors.Is(cause, zip.ErrFormat) || errors.Is(cause, io.ErrUnexpectedEOF) ||
		errors.Is(cause, io.EOF) || errors.As(cause, &corrupt) {
		return phrase.Errorf("damaged or cut short (%s); take a backup copy", cause)
	}
	return cause
}

// meter lets only so many bytes be read until it is opened. The table of contents
// is read before anything in it can be checked, so its size must be bounded
// without trusting what the file says about it.
type meter struct {
	source io.ReaderAt
	left   int64
	open   bool
}

var errSpent = errors.New("read more than allowed")

// ReadAt reads from the source as long as the allowance lasts.
func (m *meter) ReadAt(p []byte, off int64) (int, error) {
	if !m.open {
		if m.left -= int64(len(p)); m.left < 0 {
			return 0, errSpent
		}
	}
	return m.source.ReadAt(p, off)
}
