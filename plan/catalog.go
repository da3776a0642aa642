package plan

// Catalog is the moves known and the limits of their classes of movement.
type Catalog struct {
	Moves  []Move
	Limits map[string]Limit // by class of movement
}
