package handbook

import (
	"html/template"
	"slices"
	"strings"

	"wickrule/lint/report"
	"wickrule/schema"
)

// stockPage is what stands on the shelves.
type stockPage struct{ Kinds []shelf }

// shelf is everything of one kind.
type shelf struct {
	Name, Heading, Many, Anchor, About string
	Items                              []stockItem
}

type stockItem struct {
	Title, Key, Anchor string
	Facts              []fact
	Inner              *innerTable
	Source, Used       string
	Trials             []trialView
}

// fact is a figure as it is stated, and in the other system.
type fact struct{ Name, Value, Other string }

// innerTable is the blocks inside an item: the components of a fragrance.
type innerTable struct {
	Caption string
	Label   string // what it is called beside the tables of other items
	Heads   []string
	Rows    [][]string
}

// plural is what several of a kind are called.
var plural = map[string]string{"wax": "Waxes", "fragrance": "Fragrances", "dye": "Dyes", "additive": "Additives", "mold": "Molds", "container": "Containers",
	"taper": "Tapers", "topping": "Toppings", "pot": "Pots", "wick": "Wicks", "seal": "Seals", "label": "Labels"}

func (b *book) stockPage() {
	var p stockPage
	for _, kind := range schema.StockKinds() {
		items := b.Shop.Shelf(kind)
		if len(items) == 0 {
			continue
		}
		s := shelf{Name: kind, Heading: plural[kind], Many: strings.ToLower(plural[kind]), Anchor: "kind-" + kind, About: schema.Top(kind).Doc}
		for _, item := range items {
			if item.Label != "" {
				s.Items = append(s.Items, b.stockItem(item))
			}
		}
		p.Kinds = append(p.Kinds, s)
	}
	b.page("stock.html", "stock", "Stock", "On the shelves", p)
}

func (b *book) stockItem(item *schema.Block) stockItem {
	x := stockItem{Title: report.Clean(item.Title()), Key: item.Label, Anchor: stockAnchor(item.Name(), item.Label), Source: report.Clean(oneLine(sourceOf(item)))}
	var words []string
	for _, attr := range item.Spec.Attrs {
		v := item.Get(attr.Name)
		if v.Absent() || slices.Contains([]string{"title", "source", "notes"}, attr.Name) {
			continue
		}
		f := factOf(v)
		x.Facts = append(x.Facts, f)
		words = append(words, f.Name+" "+f.Value)
	}
	x.Inner = innerOf(item)
	if x.Inner != nil {
		x.Inner.Label = x.Inner.Caption + ": " + x.Title
		for _, row := range x.Inner.Rows {
			words = append(words, row...)
		}
	}
	switch recipes, _ := b.Shop.Uses(item); recipes {
	case 0:
		x.Used = "No recipe names it."
	case 1:
		x.Used = "One recipe names it."
	default:
		x.Used = counted(recipes, "recipe", "recipes") + " name it."
	}
	for _, t := range b.Shop.Trials() {
		if t.Get("tried").Text() == item.Label {
			x.Trials = append(x.Trials, b.trialOf(t))
		}
	}
	b.index.add(item.Name(), item.Label, x.Title, stockAddress(item.Name(), item.Label), "", strings.Join(words, ", "), "")
	return x
}

func sourceOf(item *schema.Block) string {
	if item.Spec.Attr("source") == nil {
		return ""
	}
	return item.Get("source").Text()
}

// innerOf lists what stands in blocks inside an item, or nil.
func innerOf(item *schema.Block) *innerTable {
	blocks := item.Blocks()
	if len(blocks) == 0 {
		return nil
	}
	t := &innerTable{Caption: "Components, by weight of the whole", Heads: []string{"substance"}}
	if blocks[0].Is("part") {
		t = &innerTable{Caption: "What it is blended of", Heads: []string{"part"}}
	}
	var attrs []string
	for _, attr := range blocks[0].Spec.Attrs {
		if slices.ContainsFunc(blocks, func(b *schema.Block) bool { return b.Spec == blocks[0].Spec && !b.Get(attr.Name).Absent() }) {
			attrs = append(attrs, attr.Name)
			t.Heads = append(t.Heads, spoken(attr.Name))
		}
	}
	for _, inner := range blocks {
		if inner.Spec != blocks[0].Spec {
			continue
		}
		row := []string{report.Clean(inner.Label)}
		for _, attr := range attrs {
			v := inner.Get(attr)
			if v.Absent() {
				row = append(row, "–")
				continue
			}
			row = append(row, valueText(v))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// spoken is an attribute's name as it is said: "flash point".
func spoken(attr string) string {
	switch attr {
	case "cas":
		return "CAS number"
	case "ufi":
		return "UFI"
	case "ate":
		return "acute toxicity (ATE)"
	case "m_factor":
		return "M-factor"
	case "m_factor_chronic":
		return "M-factor, chronic"
	}
	return strings.ReplaceAll(attr, "_", " ")
}

func factOf(v schema.Value) fact {
	f := fact{Name: spoken(v.Spec.Name), Value: valueText(v)}
	if v.IsAmount() {
		if other := v.Amount().Other(); other != f.Value {
			f.Other = other
		}
	}
	return f
}

// valueText is a value for reading.
func valueText(v schema.Value) string {
	switch {
	case v.Broken():
		return "cannot be read as it is written"
	case v.Yes():
		return "yes"
	case v.No():
		return "no"
	case v.IsAmount():
		return v.Amount().String()
	case v.Spec.Type == schema.Whole, v.Spec.Type == schema.Figure:
		return strings.Trim(v.Written(), `"`)
	}
	if items := v.Items(); len(items) > 0 {
		var all []string
		for _, i := range items {
			all = append(all, i.Text)
		}
		return report.Clean(strings.Join(all, ", "))
	}
	return report.Clean(v.Text())
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// html is what is known to be HTML.
type html = template.HTML
