package describe

import (
	"context"
	"fmt"
	"io"

	"gussetwright/app/document"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/packing"
)

// Fold is how the bag is folded, as measured.
type Fold struct {
	Stages []FoldStage `json:"stages"`
	// Obstacle is why a stage cannot be folded, "" where all can.
	Obstacle string `json:"obstacle"`
}

// FoldStage is one stage of the folding. A stage that cannot be folded has no motion.
type FoldStage struct {
	Name        string  `json:"name"`
	Foldable    bool    `json:"foldable"`
	Steps       int     `json:"steps"`     // into which the motion was parted
	Schematic   bool    `json:"schematic"` // drawn between its two ends, not reckoned
	MaxStrain   float64 `json:"max_strain"`
	MaxCrossing float64 `json:"max_crossing_mm"`
	MaxStep     float64 `json:"max_step_mm"`
	MeanStep    float64 `json:"mean_step_mm"`
}

// foldSteps is the number of steps in which a stage is measured.
const foldSteps = 100

// FoldOf folds the bag of a snapshot and measures every stage. It takes a moment.
func FoldOf(s *document.Snapshot) *Fold {
	lesson := packing.Lesson(&s.Blank)
	motion, err := packing.Solve(context.Background(), &s.Blank, nil)
	f := &Fold{Stages: []FoldStage{}, Obstacle: lesson.Obstacle.String()}
	for i := range lesson.Stages {
		if i == len(lesson.Stages)-1 && lesson.Foldable == len(lesson.Stages) && err == nil {
			f.Stages = append(f.Stages, packedStage(lesson.Stages[i].Name, motion))
			continue
		}
		f.Stages = append(f.Stages, foldStage(lesson, i))
	}
	return f
}

// packedStage tells what was measured of the packing, in which faces bend.
func packedStage(name string, motion *packing.Motion) FoldStage {
	m := &motion.Measured
	return FoldStage{
		Name: name, Foldable: true, Steps: foldSteps, Schematic: motion.Schematic,
		MaxStrain: m.MaxStrain, MaxCrossing: m.MaxCrossing, MaxStep: m.MaxStep, MeanStep: m.MeanStep,
	}
}

// foldStage measures one stage.
func foldStage(lesson *fold.Lesson, i int) FoldStage {
	stage := FoldStage{Name: lesson.Stages[i].Name, Schematic: lesson.Stages[i].Schematic, Foldable: i < lesson.Foldable}
	if stage.Foldable {
		m := lesson.Measure(i, foldSteps+1)
		stage.Steps, stage.MaxStrain, stage.MaxCrossing = foldSteps, m.MaxStrain, m.MaxCrossing
		stage.MaxStep, stage.MeanStep = m.MaxStep, m.MeanStep
	}
	return stage
}

// Text writes the folding for people, a stage to a line.
func (f *Fold) Text(w io.Writer) error {
	for _, s := range f.Stages {
		if !s.Foldable {
			continue
		}
		how := ""
		if s.Schematic {
			how = ", drawn as a sketch"
		}
		_, err := fmt.Fprintf(w, "%-10s %-13s strain %.2f %%, crossing %.2f mm, step %.2f mm at most, %.2f mm on average%s\n",
			"Stage", s.Name, 100*s.MaxStrain, s.MaxCrossing, s.MaxStep, s.MeanStep, how)
		if err != nil {
			return err
		}
	}
	if f.Obstacle == "" {
		return nil
	}
	_, err := fmt.Fprintf(w, "%-10s no further: %s\n", "Stage", f.Obstacle)
	return err
}
