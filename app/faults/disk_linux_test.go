package faults

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/app/session"
)

// bench is a session on a file in a folder that something will be done to.
type bench struct {
	*session.Session
	doc            *document.Document
	path, recovery string
}

// prepare saves a bag in a folder of its own and leaves it open.
func prepare(t *testing.T, folder string) *bench {
	t.Helper()
	b := &bench{doc: document.New(), path: filepath.Join(folder, workFolder, "bag.gusset"), recovery: filepath.Join(folder, recoveryFolder)}
	b.Session = session.New(b.doc, session.Options{Recovery: b.recovery})
	b.doc.Restore(bagOf(0))
	for _, err := range []error{os.MkdirAll(filepath.Dir(b.path), 0o777), os.MkdirAll(b.recovery, 0o777), b.SaveAs(b.path)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	return b
}

func (b *bench) edit(edit int) {
	spec := b.doc.State().Spec
	spec.Body.Width = widthOf(edit)
	b.doc.Set(spec)
}

// wantRefused expects that nothing can be saved, kept or exported, that each says why
// and what to do, and that nothing changed on the disk.
func (b *bench) wantRefused(t *testing.T, parts ...string) {
	t.Helper()
	before := contents(t, b.path)
	b.edit(2)
	wantMessage(t, b.Save(), append(parts, "save project "+b.path)...)
	wantMessage(t, b.SaveAs(filepath.Join(filepath.Dir(b.path), "bag.json")), parts...)
	for range 3 { // as often as the window tries
		wantMessage(t, b.Autosave(), "keep a copy of unsaved work", "save the bag yourself")
	}
	_, err := export.Write(t.Context(), orderOf(0, filepath.Dir(b.path)), func(float64, string) {})
	wantMessage(t, err, append(parts, "export")...)
	if !b.Dirty() || b.Path() != b.path {
		t.Errorf("dirty %t, open is %s", b.Dirty(), b.Path())
	}
	if !bytes.Equal(contents(t, b.path), before) {
		t.Error("the old file changed")
	}
	if left := append(unfinished(filepath.Dir(b.path)), unfinished(b.recovery)...); len(left) > 0 {
		t.Errorf("left: %q", left)
	}
	if folders := list(t, b.recovery); len(folders) > 1 {
		t.Errorf("each try left a folder: %q", folders)
	}
}

// wantMended expects that everything works again.
func (b *bench) wantMended(t *testing.T) {
	t.Helper()
	for _, err := range []error{b.Autosave(), b.Save()} {
		if err != nil {
			t.Error(err)
		}
	}
	if saved, err := project.Open(b.path); err != nil || saved.Spec.Body.Width != widthOf(2) || b.Dirty() {
		t.Errorf("width %g, %v, dirty %t", saved.Spec.Body.Width, err, b.Dirty())
	}
}

// A file system without room, as root can make one.
func TestFullDisk(t *testing.T) {
	folder := t.TempDir()
	if err := syscall.Mount("tmpfs", folder, "tmpfs", 0, "size=4m"); err != nil {
		t.Skipf("no file system can be mounted here (%v); TestFileSizeLimit shows the same", err)
	}
	t.Cleanup(func() { syscall.Unmount(folder, syscall.MNT_DETACH) })
	b := prepare(t, folder)
	ballast := filepath.Join(folder, "ballast")
	if err := fillUp(ballast); !errors.Is(err, syscall.ENOSPC) {
		t.Fatalf("the disk is not full: %v", err)
	}
	b.wantRefused(t, "no space left on device", "free some space", "another disk")
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	b.wantMended(t)
}

// fillUp writes until there is no room.
func fillUp(path string) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	defer file.Close()
	for {
		if _, err := file.Write(make([]byte, 512)); err != nil {
			return err
		}
	}
}

// A file that may not grow, as under a quota; every user can bind himself to that.
func TestFileSizeLimit(t *testing.T) {
	folder, isOther := asAnother(t)
	if !isOther {
		return
	}
	b := prepare(t, folder)
	signal.Ignore(syscall.SIGXFSZ) // writing fails then, instead of ending the program
	var limit syscall.Rlimit
	for _, err := range []error{
		syscall.Getrlimit(syscall.RLIMIT_FSIZE, &limit),
		syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: 8, Max: limit.Max}),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	b.wantRefused(t, "file too large", "free some space", "another disk")
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		t.Fatal(err)
	}
	b.wantMended(t)
}

// A folder that the user may read alone.
func TestReadOnlyFolder(t *testing.T) {
	folder, isOther := asAnother(t)
	if !isOther {
		return
	}
	b := prepare(t, folder)
	folders := []string{filepath.Dir(b.path), b.recovery}
	if os.Geteuid() == 0 {
		becomeNobody(t, folder)
	}
	protect := func(mode fs.FileMode) {
		for _, folder := range folders {
			if err := os.Chmod(folder, mode); err != nil {
				t.Fatal(err)
			}
		}
	}
	protect(0o555)
	defer protect(0o777)
	b.wantRefused(t, "permission denied")
	wantMessage(t, b.Save(), "nothing can be written in the folder "+folders[0], "choose another folder")
	protect(0o777)
	b.wantMended(t)
}

// becomeNobody gives up the rights of root, to whom modes mean nothing, together with
// all that is in a folder. 65534 is the user without rights on Linux
// (overflowuid in the kernel's documentation of sysctl).
func becomeNobody(t *testing.T, folder string) {
	t.Helper()
	const nobody = 65534
	err := filepath.WalkDir(folder, func(path string, _ fs.DirEntry, err error) error {
		return errors.Join(err, os.Chown(path, nobody, nobody))
	})
	for _, err := range []error{err, syscall.Setgroups(nil), syscall.Setgid(nobody), syscall.Setuid(nobody)} {
		if err != nil {
			t.Skipf("the rights of root cannot be given up here: %v", err)
		}
	}
}

// A whole file system that may be read alone, such as a disc or a drive that the
// system took from us.
func TestReadOnlyFileSystem(t *testing.T) {
	folder := t.TempDir()
	if err := syscall.Mount("tmpfs", folder, "tmpfs", 0, "size=4m"); err != nil {
		t.Skipf("no file system can be mounted here (%v)", err)
	}
	t.Cleanup(func() { syscall.Unmount(folder, syscall.MNT_DETACH) })
	b := prepare(t, folder)
	remount := func(flags uintptr) {
		if err := syscall.Mount("tmpfs", folder, "tmpfs", syscall.MS_REMOUNT|flags, "size=4m"); err != nil {
			t.Fatal(err)
		}
	}
	remount(syscall.MS_RDONLY)
	b.wantRefused(t, "read-only file system")
	wantMessage(t, b.Save(), "nothing can be written in the folder", "choose another folder")
	remount(0)
	b.wantMended(t)
}

func wantMessage(t *testing.T, err error, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("error %v, want one with %q", err, part)
		}
	}
}

func contents(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func list(t *testing.T, folder string) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	for _, entry := range entries {
		names = append(names, entry.Name())
	}
	return names
}
