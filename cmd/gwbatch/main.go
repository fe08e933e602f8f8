// Gwbatch does the work of Gussetwright without a window: it describes, checks and
// exports paper carrier bags. Ask gwbatch --help.
package main

import (
	"os"
	"time"

	"gussetwright/app/batch"
	"gussetwright/app/cache"
	"gussetwright/render/artwork/page"
)

func main() {
	page.KeepIn(cache.Folder("pdfium"))
	streams := batch.Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Today: time.Now()}
	os.Exit(batch.Run(streams, os.Args[1:]))
}
