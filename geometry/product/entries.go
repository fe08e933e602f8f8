package product

// Entry describes one number of a product. The limits leave every proposal within
// those of a bag.
type Entry struct {
	Path              string // stable, such as "product.width_mm"
	Label             string
	Unit              string // "mm" or "g"
	Least, Most       float64
	Help              string
	WhyLeast, WhyMost string
	at                func(*Product) *float64
}

// Value returns the number.
func (e *Entry) Value(p *Product) float64 { return *e.at(p) }

// Set changes the number.
func (e *Entry) Set(p *Product, value float64) { *e.at(p) = value }

// Applies tells whether the product has this number: a bottle has no depth.
func (e *Entry) Applies(p *Product) bool {
	return p.Kind != Bottle || e.Path != "product.depth_mm"
}

// MostFor returns the upper limit for the product: a bottle is as deep as it is wide.
func (e *Entry) MostFor(p *Product) float64 {
	if p.Kind == Bottle && e.Path == "product.width_mm" {
		return mostDepth
	}
	return e.Most
}

// mostDepth leaves room for the ease in the deepest gusset, in mm.
const mostDepth = 400

// Entries returns the numbers of a product in the order in which they are asked.
func Entries() []Entry { return entries }

const (
	flat = "what is thinner needs an envelope, not a bag"
	big  = "no bag is that large"
)

var entries = []Entry{
	{"product.width_mm", "Product width", "mm", 5, 900,
		"The longer side of what the product stands on; the diameter of a bottle.", flat, big,
		func(p *Product) *float64 { return &p.Width }},
	{"product.depth_mm", "Product depth", "mm", 1, mostDepth,
		"The shorter side of what the product stands on.", flat, big,
		func(p *Product) *float64 { return &p.Depth }},
	{"product.height_mm", "Product height", "mm", 5, 1200,
		"Height of the product as it stands in the bag.", flat, big,
		func(p *Product) *float64 { return &p.Height }},
	{"product.weight_g", "Product weight", "g", 0, 50_000,
		"Everything that goes into one bag; 0 when it is not known.", "", "no paper bag carries more",
		func(p *Product) *float64 { return &p.Weight }},
	{"product.ease_mm", "Ease", "mm", 0, 100,
		"How much wider and deeper the bag is than the product, so that it slides in.", "", "the product would fall about",
		func(p *Product) *float64 { return &p.Ease }},
	{"product.headroom_mm", "Headroom", "mm", 0, 300,
		"How much higher the bag is than the product, so that nothing stands out.", "", "more only wastes paper",
		func(p *Product) *float64 { return &p.Headroom }},
}
