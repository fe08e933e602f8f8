package jobsheet

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

var day = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

// demo is the project that the program opens first.
func demo(t testing.TB) bag.Spec {
	t.Helper()
	opened, err := project.ReadFrom(bytes.NewReader(assets.Demo))
	if err != nil {
		t.Fatal(err)
	}
	return opened.Spec
}

// priced is the worked example in an invented shop that has not priced everything yet.
func priced() bag.Spec {
	spec := geomtest.WorkedExample()
	spec.Currency, spec.Breaks, spec.Run.MakeReady = "EUR", []float64{500, 5000}, 50
	spec.Prices = bag.Prices{MakeReady: 80, Printing: 30, Folding: 120, Rope: 0.05, Once: 40, Markup: 10}
	spec.Stock = []bag.StockSheet{{Name: "Moor half", Width: 700, Height: 500, Grain: bag.GrainEither, Price: 0.11}}
	return spec
}

// fullest has all that a job sheet can say, in invented sizes and at invented prices: a
// slotted base, film, eyelets, cards, every price, and the most quantities and sizes that
// a project takes.
func fullest() bag.Spec {
	spec := bag.Default()
	spec.Name = "Ferrow Lake Bakery, winter carriers in all sizes for the shops of the lake region and the market halls, third edition"
	spec.Body.Base, spec.Paper.Lamination, spec.Handle.Eyelets = bag.BaseSlotted, bag.LaminationMatt, true
	spec.Body.SeamFlap, spec.Handle.Drop = 9, 8
	spec.Sheet.Width, spec.Sheet.Height = 1020, 720
	spec.Currency, spec.Run.MakeReady = "EUR", 120
	spec.Prices = bag.Prices{
		Paper: 1.35, MakeReady: 85, Printing: 42.5, Lamination: 0.31, Die: 160, Rule: 4.2, Cutting: 38, Folding: 145, Handles: 60,
		Rope: 0.055, Eyelets: 12.4, Board: 1.1, Glue: 3.9, Carton: 1.45, Pallet: 14, Once: 95, Other: 7.5, Markup: 12.5,
	}
	for i := range 12 {
		spec.Breaks = append(spec.Breaks, float64(300*(i+1)*(i+1)))
		width := 160 + 15*float64(i)
		spec.Family = append(spec.Family, bag.Size{
			Name: fmt.Sprintf("Size %d, for the counter and the window", i+1), Width: width, Gusset: 80 + 5*float64(i), Height: 240 + 20*float64(i), Quantity: 500 + 100*float64(i),
		})
	}
	spec.Stock = []bag.StockSheet{{Name: "Moor half", Width: 700, Height: 500, Grain: bag.GrainEither, Price: 0.11}}
	return spec
}

// sparsest has as little as a bag can have.
func sparsest() bag.Spec {
	spec := bag.OfSize(160, 0, 240)
	spec.Handle.Kind = bag.HandleNone
	return spec
}

func derive(t testing.TB, spec bag.Spec) *document.Snapshot {
	t.Helper()
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

func orderOf(t testing.TB, spec bag.Spec) Order {
	t.Helper()
	return Order{Snapshot: derive(t, spec), Date: day, Version: "2026-11-25 · 0a1b2c"}
}

func makerOf(t testing.TB, order Order) *maker {
	t.Helper()
	m, err := newMaker(context.Background(), order)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// written returns the path of the PDF file of an order.
func written(t testing.TB, order Order) string {
	t.Helper()
	var out bytes.Buffer
	if err := PDF(context.Background(), &out, order); err != nil {
		t.Fatal(err)
	}
	return inFile(t, "job.pdf", out.Bytes())
}

// tableOf returns the CSV file of an order.
func tableOf(t testing.TB, order Order) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := CSV(context.Background(), &out, order); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func inFile(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// spaced returns a text with single spaces.
func spaced(text string) string { return strings.Join(strings.Fields(text), " ") }
