package proof

import (
	"context"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Order is what a proof is made from.
type Order struct {
	Snapshot *document.Snapshot
	Date     time.Time // the day of the last change to the bag
	// Version is what the client's signature is for; "" for a sum over the bag and its
	// artwork, so that no two states share one.
	Version string
	// Say puts English into the language of the client; nil leaves it.
	Say  func(english string) string
	Unit geometry.Unit // of sizes, "" for mm; inches also choose the paper Letter
}

// Proof makes the files of one order. It keeps what they have in common, and belongs
// to one goroutine.
type Proof struct {
	Order
	ctx   context.Context
	stage *stage // nil until the first picture
}

// New takes an order. Work that ctx ends returns its error.
func New(ctx context.Context, order Order) *Proof {
	if order.Say == nil {
		order.Say = func(english string) string { return english }
	}
	if order.Unit == "" {
		order.Unit = geometry.Millimetre
	}
	if order.Version == "" {
		order.Version = versionOf(order.Snapshot)
	}
	return &Proof{Order: order, ctx: ctx}
}

// ready returns the error that keeps a proof from being made. Artwork that cannot be
// shown is one: a client would sign for a bag without it. What only a look at the artwork
// tells is known then, also of a bag that was changed a moment ago.
func (p *Proof) ready() (err error) {
	if err := p.ctx.Err(); err != nil {
		return err
	}
	if err := p.Snapshot.ArtError(); err != nil {
		return err
	}
	if p.Snapshot.Opening() {
		return phrase.Errorf("the artwork is still being opened; wait a moment and try again")
	}
	p.Snapshot, err = p.Snapshot.LookedAt(p.ctx)
	return err
}

// title returns the name of the project.
func (p *Proof) title() string {
	if p.Snapshot.Spec.Name == "" {
		return p.say("Paper carrier bag")
	}
	return p.Snapshot.Spec.Name
}
