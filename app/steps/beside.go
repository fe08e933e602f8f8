package steps

import "gussetwright/app/latest"

// beside returns what takes orders: a worker beside the window, which delivers to the
// window, or, where everything is to be done at once, the window itself.
func beside[O, R any](b *bench, work func(O) R, deliver func(R)) (request func(O), stop func()) {
	if b.atOnce {
		return func(order O) { deliver(work(order)) }, func() {}
	}
	worker := latest.New(work, func(made R) { b.later(func() { deliver(made) }) })
	return worker.Order, worker.Close
}
