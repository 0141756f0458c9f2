package lint

import "sync"

// Memo is a named pure function of its key alone, and costly: what it gives is
// kept for all recipes of a shop, and handed on to the shops that are made of
// it by an edit. A key that stands for the same is computed once, whoever asks.
type Memo[K comparable, V any] struct {
	Name    string
	compute func(K) V
}

// NewMemo names a function.
func NewMemo[K comparable, V any](name string, compute func(K) V) *Memo[K, V] {
	return &Memo[K, V]{Name: name, compute: compute}
}

// In is the value for a key, computed where nobody has asked for it before.
func (m *Memo[K, V]) In(v *View, key K) V { return m.For(v.shop, key) }

// For is the value for a key, for those who have the shop and no View.
func (m *Memo[K, V]) For(s *Shop, key K) V {
	k := s.memos.at(memoKey{m, key})
	k.once.Do(func() { k.value = m.compute(key) })
	return k.value.(V)
}

// Kept is how many values a shop keeps, for those who measure what is costly.
func (m *Memo[K, V]) Kept(s *Shop) int {
	s.memos.mu.Lock()
	defer s.memos.mu.Unlock()
	n := 0
	for key := range s.memos.kept {
		if key.of == any(m) {
			n++
		}
	}
	return n
}

// mostMemos bounds what is kept. A shop has a few dozen kinds of vessel and
// wax; a folder with more starts over.
const mostMemos = 2048

type memoKey struct{ of, key any }

type memo struct {
	once  sync.Once
	value any
}

type memos struct {
	mu   sync.Mutex
	kept map[memoKey]*memo
}

func newMemos() *memos { return &memos{kept: map[memoKey]*memo{}} }

func (m *memos) at(key memoKey) *memo {
	m.mu.Lock()
	defer m.mu.Unlock()
	k := m.kept[key]
	if k == nil {
		if len(m.kept) >= mostMemos {
			clear(m.kept)
		}
		k = &memo{}
		m.kept[key] = k
	}
	return k
}
