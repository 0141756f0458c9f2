package lsp

import (
	"wickrule/lint"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// burnedUnder is what the shop's test burns have to say once the edits give a
// stock item another key: a burn is of the same candle as before, and asking
// for three new ones would be a false alarm.
func (h *here) burnedUnder(r formula.Renaming, edits []schema.Edit) []schema.Edit {
	var burned []*schema.Block
	for _, recipe := range h.shop.Recipes() {
		if len(h.view(recipe).TestBurns()) > 0 {
			burned = append(burned, recipe)
		}
	}
	if len(burned) == 0 {
		return nil
	}
	after, ok := h.edited(edits)
	if !ok {
		return nil
	}
	var more []schema.Edit
	for _, recipe := range burned {
		same := after.Same("recipe", recipe.Label)
		if len(same) == 1 { // of two with one key nobody knows which was burned
			more = append(more, r.Follow(h.view(recipe), lint.NewView(after, same[0], h.today))...)
		}
	}
	return more
}

// edited is the shop as edits would make it. False: they cannot all be made.
func (h *here) edited(edits []schema.Edit) (*lint.Shop, bool) {
	ofFile := map[*schema.File][]schema.Edit{}
	for _, e := range edits {
		ofFile[e.File] = append(ofFile[e.File], e)
	}
	var put []*schema.File
	for f, edits := range ofFile {
		text, err := schema.Apply(f.Text.String(), edits)
		if err != nil {
			return nil, false
		}
		put = append(put, schema.Read(f.Name, []byte(text)))
	}
	return h.shop.Edit(put, nil), true
}
