package main

import "strings"

// origin says which metric of which benchmark a figure is.
type origin struct {
	folder    string // of the package; empty where another command measures
	benchmark string // without the word Benchmark; at the end /* for the worst below it
	metric    string // as go test prints it; other commands are named here
}

// String names the benchmark so that it can be found and run.
func (o origin) String() string {
	if o.folder == "" {
		return o.metric
	}
	return o.folder + " " + o.benchmark
}

// peer is what is measured beside ours.
type peer struct {
	name string
	from origin
}

// aim is what a figure must come to, in the unit of its metric.
type aim struct {
	words  string
	most   float64
	judged bool // there is a number to be held against
	below  bool // the number itself is too much
}

func under(words string, most float64) aim  { return aim{words, most, true, true} }
func atMost(words string, most float64) aim { return aim{words, most, true, false} }

// met tells whether the figure is what it must be.
func (a aim) met(value float64) bool {
	return value < a.most || !a.below && value == a.most
}

// row is one figure of the table.
type row struct {
	group  string
	what   string
	from   origin
	aim    aim
	beside []peer
}

// origins returns all that must be measured for the row.
func (r row) origins() []origin {
	all := []origin{r.from}
	for _, p := range r.beside {
		all = append(all, p.from)
	}
	return all
}

// of returns the origin of a metric in the benchmark "folder name".
func of(where, metric string) origin {
	folder, benchmark, _ := strings.Cut(where, " ")
	return origin{folder, benchmark, metric}
}

// times is the metric that every benchmark has.
const times = "ns/op"

// benchRows returns the table: what the program was built to reach, and where it is
// measured.
func benchRows() []row {
	var rows []row
	for _, group := range []struct {
		name string
		rows []row
	}{
		{"geometry", geometryRows()},
		{"sheets", sheetRows()},
		{"window", windowRows()},
		{"pictures", pictureRows()},
		{"artwork", artworkRows()},
		{"files", fileRows()},
	} {
		for _, r := range group.rows {
			r.group = group.name
			rows = append(rows, r)
		}
	}
	return rows
}

func geometryRows() []row {
	return []row{
		{what: "lay, plan and check one bag", from: of("geometry/check Derive", times), aim: under("under 200 µs", 200e3)},
		{what: "lay, plan and check one bag: allocations", from: of("geometry/check Derive", "allocs/op"), aim: under("under 200", 200)},
		{what: "pose of a folding stage, the slowest", from: of("geometry/fold Pose/*", times), aim: under("under 100 µs", 100e3)},
		{what: "moment of packing, read from the solved motion", from: of("geometry/packing Body", times), aim: under("under 1 ms", 1e6)},
		{what: "packing solved beside the window, slowest of five sizes", from: of("geometry/packing Solve/*", times)},
		{what: "strain of edges while packing, worst of five sizes", from: of("geometry/packing Solve/*", "strain-%"), aim: under("under 2 %", 2)},
		{what: "facet through another while packing, worst of five", from: of("geometry/packing Solve/*", "crossing-mm"), aim: atMost("at most 1 mm", 1)},
		{what: "greatest step of packing ÷ mean step, worst of five", from: of("geometry/packing Solve/*", "step/mean"), aim: atMost("at most 2", 2)},
	}
}

func sheetRows() []row {
	const ranked = "all usual sheets ranked with near misses"
	return []row{
		{what: "one blank on one sheet, median of 2000", from: of("geometry/sheet OneBlank/*", "median-ms"), aim: under("under 1 ms", 1)},
		{what: "one blank on one sheet, slowest of 2000", from: of("geometry/sheet OneBlank/*", "worst-ms"), aim: under("under 50 ms", 50)},
		{
			what: "rectangles on 2000 sheets, all together", from: of("geometry/sheet OtherPackers", "blanks"),
			beside: []peer{{"better of two npm packers", of("geometry/sheet OtherPackers", "packers-blanks")}},
		},
		{what: "sheets of those on which such a packer finds more", from: of("geometry/sheet OtherPackers", "fewer-sheets"), aim: atMost("none", 0)},
		{what: ranked + ", usual bag", from: of("geometry/sheet/advice Rank/default", times), aim: under("under 30 ms", 30e6)},
		{what: ranked + ", slowest of five bags", from: of("geometry/sheet/advice Rank/*", times), aim: under("under 30 ms", 30e6)},
		{what: "eight sizes ganged, slowest of 12 jobs", from: of("geometry/sheet/gang GangEight", "worst-ms"), aim: under("under 2 s", 2000)},
		{what: "eight sizes ganged, sheets ÷ bound, mean", from: of("geometry/sheet/gang GangEight", "sheets/bound")},
	}
}

func windowRows() []row {
	const started, bare = windowFolder + " Window", windowFolder + " Bare"
	beside := func(metric string) []peer { return []peer{{"bare window of the toolkit", of(bare, metric)}} }
	return []row{
		{what: "step of a drag to both panes, p95", from: of("app/window Drag", "p95-ms"), aim: under("under 16 ms", 16)},
		{what: "single change to both panes, first pictures, p95", from: of("app/window Change", "first-p95-ms"), aim: under("under 16 ms", 16)},
		{what: "single change to both panes, on to the fine pictures, p95", from: of("app/window Change", "fine-p95-ms")},
		{what: "start to first frame with the demo bag, under Xvfb", from: of(started, "frame-ms"), aim: under("under 1 s", 1000), beside: beside("frame-ms")},
		{what: "processor in use while nothing is done", from: of(started, "idle-%"), aim: aim{words: "near zero"}, beside: beside("idle-%")},
		{what: "memory held with the demo bag, software OpenGL", from: of(started, "resident-MB"), aim: under("under 250 MB", 250), beside: beside("resident-MB")},
		{what: "longest frame in half an hour of use", from: origin{metric: "go run ./cmd/task soak -strict"}, aim: atMost("at most 100 ms", 100)},
	}
}

func pictureRows() []row {
	return []row{
		{
			what: "folded bag, 900 × 900 with a texture of 2000 × 2000", from: of("render/solid Frame/ours", times), aim: under("under 8 ms", 8e6),
			beside: []peer{{"x/image/draw, facets alone", of("render/solid Frame/image-draw", times)}},
		},
		{
			what: "blank, 900 × 700", from: of("render/flat Pane/own", times),
			beside: []peer{
				{"fogleman/gg", of("render/flat Pane/gg", times)},
				{"x/image/vector", of("render/flat Pane/vector", times)},
			},
		},
	}
}

func artworkRows() []row {
	const photo = "JPEG of 47 megapixels: "
	return []row{
		{what: photo + "import to both panes, p95", from: of("app/window PhotoImport", "p95-ms"), aim: under("under 2 s", 2000)},
		{what: photo + "step of a drag, p95", from: of("app/window PhotoDrag", "p95-ms"), aim: under("under 16 ms", 16)},
		{
			what: photo + "production file, from the open window", from: of("app/window PhotoProduction/file", times), aim: under("under 1 s", 1e9),
			beside: []peer{{"qpdf copying that file", of("app/window PhotoProduction/qpdf-copy", times)}},
		},
		{
			what: photo + "production file by gwbatch, start to end", from: of("cmd/gwbatch Photo/gwbatch", times), aim: under("under 1 s", 1e9),
			beside: []peer{{"qpdf copying that file", of("cmd/gwbatch Photo/qpdf-copy", times)}},
		},
		{
			what: photo + "most memory of gwbatch", from: of("cmd/gwbatch Photo/gwbatch", "peak-MB"), aim: under("under 600 MB", 600),
			beside: []peer{{"qpdf copying that file", of("cmd/gwbatch Photo/qpdf-copy", "peak-MB")}},
		},
		{
			what: "page of a PDF to a picture 1000 pixels wide", from: of("render/artwork/page Render", times),
			beside: []peer{{"pdftoppm, reading and writing files", of("render/artwork/page Render", "pdftoppm-ms")}},
		},
	}
}

func fileRows() []row {
	return []row{
		{what: "production file of the demo bag, lines alone, from its entries on", from: of("app/export Dieline", times), aim: under("under 30 ms", 30e6)},
		{what: "production file of the demo bag with artwork that is open already", from: of("app/export Production", times), aim: under("under 30 ms", 30e6)},
		{what: "page for the client to turn the demo bag: size", from: of("app/export ClientPage", "file-MB"), aim: under("under 2 MB", 2)},
		{what: "gwbatch describe, start to end", from: of("cmd/gwbatch Describe", times), aim: under("under 50 ms", 50e6)},
	}
}
