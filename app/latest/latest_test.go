package latest_test

import (
	"sync"
	"testing"

	"gussetwright/app/latest"
)

// While the first order is worked on, only the last of those that follow is kept.
func TestNewestWins(t *testing.T) {
	begun, release := make(chan int, 10), make(chan bool)
	var lock sync.Mutex
	var delivered []int
	done := make(chan bool)
	worker := latest.New(func(order int) int {
		begun <- order
		<-release
		return order * 10
	}, func(result int) {
		lock.Lock()
		defer lock.Unlock()
		delivered = append(delivered, result)
		if result == 50 {
			close(done)
		}
	})
	worker.Order(1)
	if first := <-begun; first != 1 {
		t.Fatalf("began with order %d", first)
	}
	for order := 2; order <= 5; order++ {
		worker.Order(order)
	}
	close(release)
	<-done
	lock.Lock()
	defer lock.Unlock()
	if len(delivered) != 2 || delivered[0] != 10 || delivered[1] != 50 {
		t.Errorf("delivered %v, want 10 and 50", delivered)
	}
}

func TestClosedWorkerDeliversNothing(t *testing.T) {
	begun, release, ended := make(chan bool), make(chan bool), make(chan bool)
	worker := latest.New(func(int) int {
		begun <- true
		<-release
		defer close(ended)
		return 0
	}, func(int) { t.Error("delivered after closing") })
	worker.Order(1)
	<-begun
	worker.Close()
	close(release)
	<-ended
	worker.Order(2)
}

// A worker that rests ends what it has begun, and begins the newest order when it wakes.
func TestRestingWorkerBeginsNothing(t *testing.T) {
	begun, release, delivered := make(chan int, 10), make(chan bool, 10), make(chan int, 10)
	worker := latest.New(func(order int) int {
		begun <- order
		<-release
		return order
	}, func(result int) { delivered <- result })
	worker.Order(1)
	<-begun
	worker.Rest()
	worker.Order(2)
	worker.Order(3)
	release <- true
	if got := <-delivered; got != 1 {
		t.Errorf("delivered %d, want 1, which was begun before the rest", got)
	}
	worker.Order(4)
	if len(begun) > 0 {
		t.Errorf("order %d was begun at rest", <-begun)
	}
	release <- true
	worker.Wake()
	if got := <-delivered; got != 4 {
		t.Errorf("delivered %d, want 4, the newest order at the end of the rest", got)
	}
	worker.Wake()
	worker.Order(5)
	release <- true
	if got := <-delivered; got != 5 {
		t.Errorf("delivered %d, want 5", got)
	}
}
