package bag

// Default returns the bag that a new project starts from: the size of the worked
// example every trainer begins with, carried by a rope. How bags are glued, packed and
// stacked is common practice, no published source, but for the pallet, which is the
// flat one of EN 13698-1.
func Default() Spec {
	spec := Spec{
		Product: Product{Kind: ProductBox, Width: 200, Depth: 90, Height: 250},
		Body: Body{
			Width: 240, Gusset: 100, Height: 360,
			BaseOverlap: 20, SeamFlap: 20, SeamRelief: 0.5, Chamfer: 15,
			Seams: SeamsAuto, Base: BaseBlock, SlotWidth: 1,
			Top: TopTurnIn, ZigzagPitch: 10, ZigzagDepth: 4,
		},
		Handle: Handle{
			Kind: HandleRope, HoleDiameter: 5, Rise: 180, Knot: 35,
			HandHoleWidth: 90, HandHoleHeight: 30, PatchWidth: 150, PatchHeight: 40, SlitHeight: 22,
		},
		Cards: Cards{Clearance: 4, TopEdgeMargin: 5, TopGrammage: 350, BaseGrammage: 400},
		Paper: Paper{Kind: PaperGloss, Grammage: 170, Grain: GrainHeight, Lamination: LaminationNone},
		Sheet: Sheet{
			Width: 1000, Height: 700, Gripper: 12, GripperEdge: GripperLong,
			Side: 5, Tail: 5, Gap: 6, Grain: GrainEither, GrainRule: GrainRequired, Interlock: true,
		},
		Print: Print{Bleed: 3, Safe: 5},
		Run:   Run{Quantity: 1000, Spoilage: 5, GlueCoat: 40},
		Packing: Packing{
			BagsPerCarton: 100, Looseness: 30, CartonRoom: 10, CartonWall: 4, CartonWeight: 500, CartonMost: 15,
			PalletWidth: 1200, PalletDepth: 800, PalletDeck: 144, PalletHeight: 1500, PalletWeight: 25, PalletMost: 1000,
		},
	}
	spec.Derive(func(string) bool { return false })
	return spec
}

// OfSize returns the default bag in another size, in mm. A bag without depth is
// flat and has a pinch base.
func OfSize(width, gusset, height float64) Spec {
	spec := Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = width, gusset, height
	if gusset == 0 {
		spec.Body.Base = BasePinch
	}
	spec.Derive(func(string) bool { return false })
	return spec
}

// Derive sets the entries whose usual value depends on other entries, except
// those for which given returns true for their path. The rules are common
// practice: holes half a face apart (facts of bag makers, no standard), a deeper
// turn-in where a hand must find it backed, cards for a bag on a rope or a tape, brown kraft,
// more ease for what is soft.
func (s *Spec) Derive(given func(path string) bool) {
	derived := Spec{}
	derived.Handle.Spacing = s.Body.Width / 2
	derived.Handle.Drop, derived.Body.TurnIn = 25, 50
	if s.Handle.Kind == HandleHandHole {
		derived.Handle.Drop, derived.Body.TurnIn = 45, 80
	}
	threaded := s.Handle.Kind.IsThreaded()
	derived.Cards.Top = threaded && s.Body.Top == TopTurnIn
	derived.Cards.Base = threaded && s.Body.Base != BasePinch
	derived.Paper.Colour = ColourWhite
	if s.Paper.Kind == PaperKraft {
		derived.Paper.Colour = ColourNatural
	}
	derived.Product.Ease, derived.Product.Headroom = s.Product.Kind.room()
	for _, path := range []string{
		"product.ease_mm", "product.headroom_mm",
		"handle.spacing_mm", "handle.drop_mm", "bag.turn_in_mm", "cards.top", "cards.base", "paper.colour",
	} {
		if !given(path) {
			field, _ := FieldAt(path)
			field.copy(s, &derived)
		}
	}
}

// room returns the ease and the headroom that are usual for a kind of product.
func (k ProductKind) room() (ease, headroom float64) {
	switch k {
	case ProductBottle:
		return 10, 40
	case ProductGarment:
		return 20, 60
	case ProductFree:
		return 0, 50
	}
	return 10, 60
}

// TurnInDepth returns the depth of the turn-in as it is built: 0 for a raw edge.
func (b Body) TurnInDepth() float64 {
	if b.Top != TopTurnIn {
		return 0
	}
	return b.TurnIn
}

// BaseFlap returns the height of the base flaps, B = D/2 + V; a pinch base folds
// over by V alone.
func (b Body) BaseFlap() float64 {
	if b.Base == BasePinch {
		return b.BaseOverlap
	}
	return b.Gusset/2 + b.BaseOverlap
}

// HeightFromFlatFold returns the standing height of a bag whose height was
// measured from the flat-fold crease, which lies half a gusset above the base.
func HeightFromFlatFold(toFlatFold, gusset float64) float64 { return toFlatFold + gusset/2 }

// Volume returns W × D × H in litres: what the empty box of the bag holds.
func (b Body) Volume() float64 { return b.Width * b.Gusset * b.Height / 1e6 }
