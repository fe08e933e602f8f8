package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// randomLibrary is the library from which Go takes random numbers on Windows. Wine has
// it since version 9; Debian 12 brings version 8.
const randomLibrary = "bcryptprimitives.dll"

// randomStandIn is what the trial puts in its place there: the one function that Go
// calls, which asks an older one for the numbers. No package carries it.
const randomStandIn = `#include <windows.h>
BOOLEAN NTAPI SystemFunction036(PVOID, ULONG);
__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE data, SIZE_T size)
{
	return SystemFunction036(data, (ULONG)size);
}
`

// prepareWine sets up the imitation of Windows for a trial, and gives it what it lacks.
func (t *trial) prepareWine(folder string) error {
	// Wine would ask in a dialog whether to fetch what stands in for mscoree and mshtml.
	t.env = append(t.env, "WINEPREFIX="+folder, "WINEDEBUG=-all", "WINEARCH=win64", "WINEDLLOVERRIDES=mscoree=;mshtml=")
	if err := t.m.run(command{folder: t.folder, env: t.env, words: []string{"wine", "wineboot", "--init"}}); err != nil {
		return err
	}
	library := filepath.Join(folder, "drive_c", "windows", "system32", randomLibrary)
	if t.m.has(library) {
		return nil
	}
	source := filepath.Join(t.folder, "random.c")
	if err := os.WriteFile(source, []byte(randomStandIn), readable); err != nil {
		return fmt.Errorf("give Wine what it lacks: %w", err)
	}
	t.note = ", with a stand-in for " + randomLibrary + ", which this Wine lacks"
	return t.m.run(command{words: []string{t.compiler, "-shared", "-o", library, source, "-ladvapi32"}})
}

// settle waits until nothing of Wine runs any more. What it started without a screen
// would keep a window off the screen that comes next.
func (t *trial) settle() error {
	if t.system != "windows" {
		return nil
	}
	return t.m.run(command{env: t.env, words: []string{"wineserver", "--wait"}})
}
