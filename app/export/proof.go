package export

import (
	"io"

	"gussetwright/app/proof"
)

// proof returns the proof of the bag, of which three kinds of file are made.
func (o *order) proof() *proof.Proof {
	if o.made == nil {
		o.made = proof.New(o.ctx, proof.Order{Snapshot: o.snapshot, Date: o.Date, Say: o.Say, Unit: o.Unit})
	}
	return o.made
}

// writeProof writes the proof that the client signs.
func writeProof(w io.Writer, o *order, _ int) error { return o.proof().PDF(w) }

// writePage writes the page on which the client turns the bag.
func writePage(w io.Writer, o *order, _ int) error { return o.proof().Page(w) }

// writeBag writes one of the pictures of the folded bag.
func writeBag(w io.Writer, o *order, number int) error {
	return o.proof().Picture(w, proof.Sides()[number])
}

// pictureEndings returns the endings of the pictures, in the order of their sides.
func pictureEndings() []string {
	var endings []string
	for _, side := range proof.Sides() {
		endings = append(endings, "-"+string(side)+".png")
	}
	return endings
}
