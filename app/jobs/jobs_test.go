package jobs_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/jobs"
)

var day = time.Date(2026, time.March, 31, 0, 0, 0, 0, time.UTC)

func order(folder string) export.Job {
	return export.Job{Folder: folder, Project: "tea", Snapshot: document.New().State().Snapshot, Date: day, Kinds: export.Kinds()}
}

func ignore(float64, string) {}

// await starts a job and waits for its result.
func await(t *testing.T, r *jobs.Runner, job export.Job, progress func(float64, string)) (result jobs.Result) {
	t.Helper()
	if err := r.Start(job, progress, func(got jobs.Result) { result = got }); err != nil {
		t.Fatal(err)
	}
	r.Wait()
	return result
}

func TestExportTellsProgressAndResult(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "out")
	var shares []float64
	var kinds []string
	r := jobs.New(export.Write)
	result := await(t, r, order(folder), func(share float64, kind string) {
		shares, kinds = append(shares, share), append(kinds, kind)
	})
	files := 0
	for _, kind := range export.Kinds() {
		files += len(kind.Files("tea", order(folder).Snapshot))
	}
	if result.Err != nil || len(result.Paths) != files || result.Cancelled() {
		t.Errorf("result %+v", result)
	}
	for _, path := range result.Paths {
		if info, err := os.Stat(path); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", path, err)
		}
	}
	if !slices.IsSorted(shares) || shares[0] != 0 || len(shares) != len(export.Kinds()) || kinds[0] != "dieline" {
		t.Errorf("shares %v of %v", shares, kinds)
	}
	if r.Busy() {
		t.Error("busy after the end")
	}
}

func TestCancelLeavesNothing(t *testing.T) {
	for _, at := range export.Kinds() {
		t.Run(at.Name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "out")
			r := jobs.New(export.Write)
			job := order(folder)
			if at.Name != job.Kinds[0].Name { // one file is made before, which is enough
				job.Kinds = []export.Kind{job.Kinds[0], at}
			}
			result := await(t, r, job, func(_ float64, kind string) {
				if kind == at.Name {
					r.Cancel()
				}
			})
			if !result.Cancelled() || len(result.Paths) != 0 {
				t.Errorf("result %+v", result)
			}
			if _, err := os.Stat(folder); err == nil {
				t.Error("the folder was made")
			}
			next := order(folder)
			next.Kinds = next.Kinds[:1]
			if again := await(t, r, next, ignore); again.Err != nil {
				t.Errorf("the next job: %v", again.Err)
			}
		})
	}
}

func TestErrorOfTheWriter(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	result := await(t, jobs.New(export.Write), order(blocked), ignore)
	if result.Err == nil || !strings.Contains(result.Err.Error(), blocked) || result.Cancelled() {
		t.Errorf("result %+v", result)
	}
}

// held is a writer that waits to be let go.
func held(letGo chan struct{}) jobs.Writer {
	return func(ctx context.Context, _ export.Job, _ func(float64, string)) ([]string, error) {
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-letGo:
			return []string{"file"}, nil
		}
	}
}

// Many goroutines start and cancel: one job runs at a time, each that was started
// is told once, and no goroutine stays.
func TestOneAtATime(t *testing.T) {
	before := runtime.NumGoroutine()
	letGo := make(chan struct{})
	r := jobs.New(held(letGo))
	told := make(chan jobs.Result, 100)
	if err := r.Start(export.Job{}, ignore, func(got jobs.Result) { told <- got }); err != nil {
		t.Fatal(err)
	}
	var all sync.WaitGroup
	for range 50 {
		all.Go(func() {
			if err := r.Start(export.Job{}, ignore, func(jobs.Result) { t.Error("a second job ran") }); !errors.Is(err, jobs.ErrBusy) {
				t.Errorf("error %v, want %v", err, jobs.ErrBusy)
			}
			if !r.Busy() {
				t.Error("not busy while a job runs")
			}
		})
	}
	all.Wait()
	for range 50 {
		all.Go(r.Cancel)
		all.Go(r.Wait)
	}
	all.Wait()
	r.Cancel() // nothing to cancel
	if result := <-told; !result.Cancelled() || len(told) != 0 {
		t.Errorf("result %+v, and %d more", result, len(told))
	}
	close(letGo)
	if result := await(t, r, export.Job{}, ignore); result.Err != nil || !slices.Equal(result.Paths, []string{"file"}) {
		t.Errorf("the next job: %+v", result)
	}
	for range 100 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("%d goroutines, before there were %d", runtime.NumGoroutine(), before)
}

// The next job may be started where the end of the last is told.
func TestStartFromDone(t *testing.T) {
	letGo := make(chan struct{})
	close(letGo)
	r := jobs.New(held(letGo))
	second := make(chan error)
	err := r.Start(export.Job{}, ignore, func(jobs.Result) {
		err := r.Start(export.Job{}, ignore, func(got jobs.Result) { second <- got.Err })
		if err != nil {
			second <- err
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := <-second; err != nil {
		t.Error(err)
	}
	r.Wait()
}

func TestFaultOfTheProgramIsAnError(t *testing.T) {
	r := jobs.New(func(context.Context, export.Job, func(float64, string)) ([]string, error) {
		panic("no such panel")
	})
	result := await(t, r, export.Job{}, ignore)
	if result.Err == nil || !strings.Contains(result.Err.Error(), "no such panel") || !strings.Contains(result.Err.Error(), "save the bag") {
		t.Errorf("error %v", result.Err)
	}
}

func TestWaitWithoutJob(t *testing.T) { jobs.New(export.Write).Wait() }
