package lint

import "sync"

// RuleMemo is a named pure function of a shop's own rule blocks and of its shop
// block, which tunes them. What it gives is kept for the shop, and for those
// made of it by edits that leave both as they are.
type RuleMemo[V any] struct {
	Name    string
	compute func(*Shop) V
}

// NewRuleMemo names a function, which must look at nothing of the shop but its
// Rules and its Config.
func NewRuleMemo[V any](name string, compute func(*Shop) V) *RuleMemo[V] {
	return &RuleMemo[V]{Name: name, compute: compute}
}

// For is the value for a shop, computed where nobody has asked for it before.
func (m *RuleMemo[V]) For(s *Shop) V {
	k := s.ofRules.at(m)
	k.once.Do(func() { k.value = m.compute(s) })
	return k.value.(V)
}

// ruleMemos is what is kept as long as the rule and shop blocks are the same.
type ruleMemos struct {
	mu   sync.Mutex
	kept map[any]*memo
}

func (m *ruleMemos) at(of any) *memo {
	m.mu.Lock()
	defer m.mu.Unlock()
	k := m.kept[of]
	if k == nil {
		if m.kept == nil {
			m.kept = map[any]*memo{}
		}
		k = &memo{}
		m.kept[of] = k
	}
	return k
}
