package shoprule

import (
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Excerpt is a recipe of the shop cut down to what the rule needs to say of it
// what it says now: the text of a recipe block of that key, for a sound or a
// faulty example. False: the rule says otherwise of it, or nothing.
func (d *Draft) Excerpt(view *lint.View, key string, faulty bool) (string, bool) {
	if !d.p.runs() {
		return "", false
	}
	file := schema.Read(exampleFile, []byte(view.Recipe.File.Text.Slice(view.Recipe.Span)+"\n"))
	if len(file.Blocks) == 0 {
		return "", false
	}
	whole := d.p.outcome(view)
	if whole.spoke != faulty || !faulty && (!whole.held || whole.unknown) {
		return "", false
	}
	same := func(text string) (*schema.File, bool) {
		f := schema.Read(exampleFile, []byte(text))
		views := view.Laid(f)
		if !f.Clean || len(views) != 1 {
			return nil, false
		}
		o := d.p.outcome(views[0])
		return f, o.spoke == whole.spoke && o.held == whole.held && o.unknown == whole.unknown && o.message == whole.message
	}
	label := []schema.Edit{{File: file, Span: file.Blocks[0].LabelSpan, Text: schema.Quote(key)}}
	text, err := schema.Apply(file.Text.String(), label)
	if err != nil {
		return "", false
	}
	file, ok := same(text)
	if !ok {
		return "", false
	}
	// What can go without a difference goes, the last first: a step rests on what
	// stands before it.
	for n := 0; ; n++ {
		cut, more := cutOf(file, n)
		if !more {
			break
		}
		shorter, err := schema.Apply(file.Text.String(), []schema.Edit{cut})
		if err != nil {
			continue
		}
		if f, ok := same(shorter); ok {
			file, n = f, n-1
		}
	}
	if f, ok := same(withoutGaps(file.Text.String())); ok {
		file = f
	}
	b := file.Blocks[0]
	return file.Text.Slice(b.Span), true
}

// withoutGaps is a text without its empty lines, which what was cut out leaves
// behind.
func withoutGaps(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		if strings.TrimSpace(line) != "" {
			b.WriteString(line)
		}
	}
	return b.String()
}

// cutOf takes the nth of a recipe's parts out: its blocks from the last to the
// first, its attributes, then the attributes of the blocks.
func cutOf(file *schema.File, n int) (schema.Edit, bool) {
	recipe := file.Blocks[0]
	blocks := recipe.Blocks()
	if n < len(blocks) {
		return schema.RemoveBlock(blocks[len(blocks)-1-n]), true
	}
	n -= len(blocks)
	for _, b := range append([]*schema.Block{recipe}, blocks...) {
		for v := range b.Attrs() {
			if n == 0 {
				return schema.RemoveAttr(v), true
			}
			n--
		}
	}
	return schema.Edit{}, false
}

// AsWritten is a rule of the shop's own as its examples go by: without what a
// shop has for its options.
func AsWritten(shop *lint.Shop, rule *schema.Block) *lint.Rule {
	return programs.For(shop, written(rule)).rule
}

// Named is the rule of a shop's own of that name, where it can be read and is
// the one that counts; or nil.
func Named(shop *lint.Shop, name string) *lint.Rule {
	p := own.For(shop).named[name]
	if p == nil || !p.runs() {
		return nil
	}
	return p.rule
}
