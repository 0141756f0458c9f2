package hazard

// Deciding are the steps that the label rests on, in the order of Annex I: those
// whose limit is reached. Of a substance that only has to be named there is one
// of its own.
func (c *Classification) Deciding() []*Step {
	var steps []*Step
	for i := range c.Steps {
		if c.Steps[i].Reached {
			steps = append(steps, &c.Steps[i])
		}
	}
	return steps
}

// Least says why the classification is the least that applies, "" where it is
// whole: "what is in Oil from the fair is not stated".
func (c *Classification) Least() string {
	switch {
	case c.Broken:
		return "something it rests on cannot be read"
	case len(c.Unknown) > 0:
		in := c.Unknown[0]
		return "what is in " + in.Stock.Title() + " is not stated"
	case len(c.Unread) > 0:
		return "an entry of the stock cannot be put to use"
	case len(c.Waits) > 0:
		return "how much of the total an ingredient is, is not known"
	case len(c.NoM) > 0:
		return c.NoM[0].Label + " states no M-factor, and 1 is used"
	}
	return ""
}
