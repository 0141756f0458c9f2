package report_test

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// The shop whose report is written in these tests, and rules that find
// something in it: what matters here is how it is said.

var shopFiles = map[string]string{
	"shop.candle.hcl": "shop \"larkspur-quay\" {\n  title = \"Larkspur Quay Candleworks\"\n}\n",
	"stock/waxes.candle.hcl": `wax "northlight-pillar" {
  title           = "Northlight paraffin"
  family          = "paraffin"
  fragrance_limit = "6 % of wax"
}
`,
	"recipes/tide-pillar.candle.hcl": `recipe "tide-pillar" {
  title = "Tide and thyme pillar"

  wax "northlight-pillar" {
    weight = "1.24 kg"
  }
  fragrance "tide-and-thyme" {
    load = "7 % of wax"
  }
  step "pour" {
    at = "186 °F" # 🕯 hot` + "\x1b[31m" + `!
  }
}
`,
	"recipes/skerry.candle.hcl": `recipe "skerry" {
  title = "Skerry jar"

  concession "batch-left-over" {
    reason = "The spare goes into tealights the same day"
    until  = "2027-03-31"
  }
}
`,
}

func at(b *schema.Block, attr string) lint.Place { return lint.AtValue(b.Get(attr)) }

func rewrite(title string, safe bool, v schema.Value, text string) schema.Fix {
	return schema.Fix{Title: title, Safe: safe, Edits: []schema.Edit{{File: v.Block.File, Span: v.Span(), Text: text}}}
}

func inner(b *schema.Block, name string) *schema.Block {
	for found := range b.Each(name) {
		return found
	}
	return nil
}

func testRules() []*lint.Rule {
	return []*lint.Rule{
		{Name: "fragrance-over-limit", Group: "Formulation", Title: "more fragrance than the wax holds", Levels: lint.Every(lint.Must),
			Why: "What the wax does not hold sweats out: *wet* spots.", Remedy: "Lower the load.", Source: "common practice", Check: func(p *lint.Pass) {
				oil := inner(p.Recipe, "fragrance")
				if oil == nil {
					return
				}
				wax, _ := p.Stock("wax", "northlight-pillar")
				p.Report(lint.Finding{
					At:      at(oil, "load"),
					Message: "7 % of wax is over what Northlight paraffin holds (6 % of wax) by 13 g",
					Notes:   []lint.Note{{Place: at(wax, "fragrance_limit"), Message: "limit stated here"}},
					Fixes: func() []schema.Fix {
						return []schema.Fix{rewrite("lower the load to 6 % of wax", false, oil.Get("load"), `"6 % of wax"`)}
					},
				})
				p.CannotCheck(wax, "flash_point")
			}},
		{Name: "pour-too-hot", Levels: lint.Every(lint.Should), Check: func(p *lint.Pass) {
			step := inner(p.Recipe, "step")
			if step == nil {
				return
			}
			p.Report(lint.Finding{
				At:      at(step, "at"),
				Message: "186 °F (85.6 °C) is hotter than Northlight paraffin is poured (168 to 182 °F) by 4 °F: it shrinks more, and the finished candle may sink around its wick",
				Fixes: func() []schema.Fix {
					v := step.Get("at")
					return []schema.Fix{
						rewrite("pour at 182 °F", false, v, `"182 °F"`), rewrite("pour at 180 °F", false, v, `"180 °F"`),
						rewrite("pour at 178 °F", false, v, `"178 °F"`), rewrite("pour at 176 °F", true, v, `"176 °F"`),
					}
				},
			})
		}},
		{Name: "made-for-missing", Levels: lint.Every(lint.Consider), Check: func(p *lint.Pass) {
			p.Report(lint.Finding{At: lint.AtHeader(p.Recipe), Message: "nothing says whom " + p.Recipe.Title() + " is made for: it is judged as made for sale"})
		}},
		{Name: "batch-left-over", Levels: lint.Every(lint.Should), Check: func(p *lint.Pass) {
			if p.Recipe.Label == "skerry" {
				p.Report(lint.Finding{At: lint.AtLabel(p.Recipe), Message: "1.2 kg is over what the jars take (1 kg) by 200 g"})
			}
		}},
		{Name: "unused-stock", Levels: lint.Every(lint.Consider), About: lint.AboutFile, Check: func(p *lint.Pass) {
			wax, _ := p.Stock("wax", "northlight-pillar")
			p.Report(lint.Finding{At: lint.AtLabel(wax), Message: "no recipe uses northlight-pillar"})
		}},
	}
}

func load(t *testing.T, root string, files map[string]string) *lint.Shop {
	t.Helper()
	fsys := fstest.MapFS{}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	shop, errs := lint.Load(fsys, root, nil)
	require.Empty(t, errs)
	return shop
}

const today = "2026-10-20"

// document is the shop checked by the rules above and by more.
func document(t *testing.T, more ...*lint.Rule) *report.Document {
	t.Helper()
	return &report.Document{Shops: []*lint.Report{lint.Run(load(t, "larkspur", shopFiles), append(testRules(), more...), today)}}
}
