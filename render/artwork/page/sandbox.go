package page

import (
	"context"
	"errors"
	"io"
	"runtime"
	"sync"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"

	"gussetwright/geometry/phrase"
)

// shared is the one PDFium of the process: compiling it takes seconds, so all calls
// use the same code, each in a memory of its own.
var shared sandbox

type sandbox struct {
	lock   sync.Mutex
	folder string // where the compiled code is kept, or empty
	once   sync.Once
	pool   pdfium.Pool
	err    error
}

// KeepIn says where PDFium is kept once it is compiled, which takes one to three
// seconds of a processor at the first page that is read; the next start then takes less
// than a tenth of a second. It must be a folder that only the user can write to; one that
// is not there is made so once it is needed. After the first page it has no effect.
func KeepIn(folder string) {
	shared.lock.Lock()
	defer shared.lock.Unlock()
	shared.folder = folder
}

func (s *sandbox) prepare() {
	s.once.Do(func() {
		s.lock.Lock()
		folder := s.folder
		s.lock.Unlock()
		s.pool, s.err = compile(folder)
	})
}

func compile(folder string) (pdfium.Pool, error) {
	config := wazero.NewRuntimeConfig().
		WithCoreFeatures(api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling).
		WithMemoryLimitPages(memoryPages).
		WithCloseOnContextDone(true)
	if folder != "" {
		// This makes the folder. Where it cannot be written to, the code is compiled
		// every time.
		if cache, err := wazero.NewCompilationCacheWithDir(folder); err == nil {
			config = config.WithCompilationCache(cache)
		}
	}
	pool, err := webassembly.Init(webassembly.Config{
		Context:       experimental.WithCompilationWorkers(context.Background(), runtime.GOMAXPROCS(0)),
		MaxTotal:      atOnce,
		RuntimeConfig: config,
		FSConfig:      wazero.NewFSConfig(), // no files
		Stdout:        io.Discard,
		Stderr:        io.Discard,
		RandomSource:  zeros{}, // the same file always gives the same copy
	})
	if err != nil {
		return nil, phrase.Errorf("start the PDF reader: %s; restart the program, or save the artwork as SVG or TIFF", err)
	}
	return pool, nil
}

// zeros is where PDFium takes its random numbers from.
type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}

// run does work in a fresh PDFium, which is thrown away afterwards. It ends when ctx
// does, or after limit.
func (s *sandbox) run(ctx context.Context, limit time.Duration, work func(pdfium.Pdfium) error) error {
	s.prepare()
	if s.err != nil {
		return s.err
	}
	instance, err := s.pool.GetInstanceWithContext(ctx) // waits while others are at it
	if err != nil {
		return reason(ctx, ctx, limit, err)
	}
	limited, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	killed := make(chan struct{})
	kill := context.AfterFunc(limited, func() {
		instance.Kill()
		close(killed)
	})
	err = work(instance)
	if kill() {
		instance.Kill() // quicker than closing what was opened one by one
	} else {
		<-killed
	}
	return reason(ctx, limited, limit, err)
}

// reason tells why work ended: because it was asked to, for want of time, or of itself.
func reason(ctx, limited context.Context, limit time.Duration, err error) error {
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case errors.Is(limited.Err(), context.DeadlineExceeded):
		return phrase.Errorf("it took more than %v; the page is too complex or the file is damaged: simplify it, or save it as a picture", limit)
	}
	return err
}
