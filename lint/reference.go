package lint

import (
	"iter"
	"slices"

	"wickrule/schema"
)

// Reference is a place that names a block defined elsewhere: an ingredient's
// label, the wick of a mold, the seal of a step.
type Reference struct {
	Kinds []string // what it may refer to: names of top-level blocks
	Key   string
	At    Place
	From  *schema.Block // the block it stands in
}

// References yields every reference a file makes, in order. What stands in
// the examples of a shop rule is not of this shop and left out, and so is
// what cannot be read.
func References(f *schema.File) iter.Seq[Reference] {
	return func(yield func(Reference) bool) {
		for _, b := range f.Blocks {
			if b.Is("rule") {
				if !ownReferences(b, yield) {
					return
				}
			} else if !references(b, yield) {
				return
			}
		}
	}
}

// InExamples yields every reference that the examples of a file's shop rules
// make, each with the example it stands in. What an example has of its own
// comes before what the shop has.
func InExamples(f *schema.File) iter.Seq2[*schema.Block, Reference] {
	return func(yield func(*schema.Block, Reference) bool) {
		for _, b := range f.Blocks {
			if !b.Is("rule") {
				continue
			}
			for _, example := range b.Blocks() {
				if (example.Is("sound") || example.Is("faulty")) && !references(example, func(r Reference) bool { return yield(example, r) }) {
					return
				}
			}
		}
	}
}

func references(b *schema.Block, yield func(Reference) bool) bool {
	if !ownReferences(b, yield) {
		return false
	}
	for _, inner := range b.Blocks() {
		if !references(inner, yield) {
			return false
		}
	}
	return true
}

// ownReferences are those of a block without the blocks inside it.
func ownReferences(b *schema.Block, yield func(Reference) bool) bool {
	if b.Spec.Label == schema.Refers && b.Label != "" {
		if !yield(Reference{b.Spec.LabelRefers, b.Label, AtLabel(b), b}) {
			return false
		}
	}
	for v := range b.Attrs() {
		spec := v.Spec
		if spec.Type != schema.Key && spec.Type != schema.Keys {
			continue
		}
		if v.Known() && spec.Type == schema.Key {
			if !yield(Reference{spec.Refers, v.Text(), AtValue(v), b}) {
				return false
			}
			continue
		}
		for _, item := range v.Items() {
			if !yield(Reference{spec.Refers, item.Text, AtItem(v, item), b}) {
				return false
			}
		}
	}
	return true
}

// Resolve is the block the reference names, or nil.
func (s *Shop) Resolve(r Reference) *schema.Block {
	for _, kind := range r.Kinds {
		if b := s.Find(kind, r.Key); b != nil {
			return b
		}
	}
	return nil
}

// KeysOf lists the keys of several kinds, sorted.
func (s *Shop) KeysOf(kinds []string) []string {
	var keys []string
	for _, kind := range kinds {
		keys = append(keys, s.Keys(kind)...)
	}
	slices.Sort(keys)
	return keys
}
