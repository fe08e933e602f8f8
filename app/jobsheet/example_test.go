package jobsheet_test

import (
	"bytes"
	"context"
	"fmt"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/jobsheet"
	"gussetwright/geometry/bag"
)

func ExampleCSV() {
	spec := bag.Default()
	spec.Name = "Bell Lane"
	snapshot, err := document.Derive(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	var table bytes.Buffer
	order := jobsheet.Order{Snapshot: snapshot, Date: time.Date(2026, time.March, 31, 0, 0, 0, 0, time.UTC)}
	if err := jobsheet.CSV(context.Background(), &table, order); err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range strings.Split(table.String(), "\r\n")[:6] {
		fmt.Println(line)
	}
	// Output:
	// section,item,value,unit,note
	// Project,Name,Bell Lane,,
	// Project,Date,2026-03-31,,
	// Bag,Face width W,240,mm,
	// Bag,Gusset depth D,100,mm,
	// Bag,Standing height H,360,mm,
}
