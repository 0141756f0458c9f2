package quantity

// String is the text as written, or where computed the number in its own unit.
func (q Quantity) String() string { return q.Written() }

// Show is q in the units of a system, rounded for a workbench.
func (q Quantity) Show(s System) string { return q.Written() }

// Both is q as written, or in s where computed, with the other system in brackets.
func (q Quantity) Both(s System) string { return q.Written() }

// Other is q in the other system only.
func (q Quantity) Other() string { return q.Written() }
