package schema

func shopSpec() *BlockSpec {
	return &BlockSpec{
		ID: "shop", Name: "shop", Label: Defines, Once: true,
		Doc: "The shop itself: what its sheets show first, where it sells, how warm the workshop is. " +
			"It stands in shop.candle.hcl, and the folder of that file with everything below it is the shop.",
		Example: `shop "larkspur-quay" {
  title   = "Larkspur Quay Candleworks"
  units   = "us"
  markets = ["US"]
  room    = "70 °F"

  tune "second-pour-missing" {
    level = "consider"
  }
}
`,
		Attrs: []*AttrSpec{
			titleAttr(`"Larkspur Quay Candleworks"`),
			{Name: "units", Type: Choice, Choices: []string{"us", "metric"}, Example: `"us"`,
				Doc: "Which units sheets and hovers show first. It never changes how a written amount is read; left out, it is us."},
			{Name: "markets", Type: Choices, Choices: marketNames, Example: `["US"]`,
				Doc: "Where candles made for sale are sold, unless a recipe says otherwise: it decides which label rules apply. Left out, it is US."},
			{Name: "room", Type: Amount, Dims: dimTemperature, Example: `"70 °F"`,
				Doc: "The usual temperature of the workshop. Glass that is not warmed is taken to be this warm, and wax cools towards it; left out, it is 70 °F."},
			{Name: "scale", Type: Amount, Dims: dimWeight, Example: `"1 g"`,
				Doc: "The step of the shop's scale. Batch sheets round to it: wax up, all else down, so that no load rises; left out, it is 1 g."},
			{Name: "rules_from", Type: Texts, Example: `["../house-rules"]`,
				Doc: "Folders beside the shop, in the same repository, whose rules and trials are the shop's too: written from the shop file on, with /. So several shops keep one set of rules."},
			languagesAttr("The languages of the countries sold to, by their two letters. In the EU a label must speak the official language of the country it is sold in."),
		},
		Blocks: []*BlockSpec{tuneSpec()},
	}
}

func tuneSpec() *BlockSpec {
	return &BlockSpec{
		ID: "shop tune", Name: "tune", Label: RuleName,
		Doc: "Changes how loud one rule speaks in this shop, and what the options of a rule of the shop's own are here. " +
			"Rules that guard against fire cannot be made quieter for candles made for sale.",
		Example: "tune \"second-pour-missing\" {\n  level = \"consider\"\n}\n",
		Attrs: []*AttrSpec{
			{Name: "level", Type: Choice, Choices: []string{"must", "should", "consider", "off"}, Example: `"consider"`,
				Doc: "How loud the rule speaks from now on; off silences it. Left out, it speaks as it says itself."},
			{Name: "reason", Type: Prose, Example: `"Our workshop is warm, and these candles set slowly."`,
				Doc: "Why the shop differs, for whoever reads it next year."},
		},
		Blocks: []*BlockSpec{
			{ID: "tune option", Name: "option", Label: FreeLabel,
				Doc:     "What an option of a rule of the shop's own is in this shop, so that shops that share the rule can differ. The rule's examples go by the figure in the rule.",
				Example: "option \"in_hand\" {\n  is = \"5 °F\"\n}\n",
				Attrs: []*AttrSpec{
					{Name: "is", Type: Literal, Required: true, Example: `"5 °F"`,
						Doc: "What it is here: of the same kind as in the rule, an amount of the same dimension, a number, a text or a yes or no."},
				}},
		},
	}
}
