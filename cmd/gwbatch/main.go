// Gwbatch does the work of Gussetwright without a window: it describes, checks and
// exports paper carrier bags. Ask gwbatch --help, or gwbatch version.
package main

import (
	"fmt"
	"os"
	"time"

	"gussetwright/app/batch"
	"gussetwright/app/cache"
	"gussetwright/app/release"
	"gussetwright/render/artwork/page"
)

func main() {
	if len(os.Args) == 2 && (os.Args[1] == "version" || os.Args[1] == "--version") {
		fmt.Println("gwbatch", release.Version())
		return
	}
	page.KeepIn(cache.Folder("pdfium"))
	streams := batch.Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Today: time.Now()}
	os.Exit(batch.Run(streams, os.Args[1:]))
}
