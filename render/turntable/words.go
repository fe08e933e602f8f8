package turntable

// Words are the texts of the page that do not come from the job.
type Words struct {
	Bag    string // what the picture shows, for those who do not see it
	Turn   string // how to turn the bag
	Views  string // what the links to the views are together
	Slant  string // the view at an angle
	Front  string
	Right  string
	Back   string
	Left   string
	Above  string
	Excuse string // beside the still picture, where the bag cannot be turned

	Colours string // heading of the swatches
	Open    string // heading of the notes

	Approval     string // heading of what is filled in
	HowToApprove string
	Changes      string // entries
	Name         string
	Date         string
	Signature    string
	Print        string // button
}

// English returns the words in English.
func English() Words {
	return Words{
		Bag: "The folded bag", Turn: "Drag to turn, pinch or scroll to zoom", Views: "Views",
		Slant: "At an angle", Front: "Front", Right: "Right", Back: "Back", Left: "Left", Above: "From above",
		Excuse:  "Turning the bag needs a newer browser. This is a still picture.",
		Colours: "Colours", Open: "Open points",
		Approval: "Approval", HowToApprove: "Fill in, then print or save as PDF. Nothing is sent.",
		Changes: "Changes", Name: "Name", Date: "Date", Signature: "Signature", Print: "Print",
	}
}
