package schema

// stockSpecs are the items on the shop's shelves.
func stockSpecs() []*BlockSpec {
	return []*BlockSpec{
		waxSpec(), fragranceSpec(), dyeSpec(), additiveSpec(),
		moldSpec(), containerSpec(), taperSpec(), toppingSpec(), potSpec(),
		wickSpec(), sealSpec(), labelSpec(),
	}
}

func waxSpec() *BlockSpec {
	return &BlockSpec{
		ID: "wax", Name: "wax", Label: Defines, Stock: true,
		Doc: "A wax on the shelf, with its supplier's figures. Those figures beat every rule of thumb, so copy them from the sheet of this very grade.",
		Example: `wax "northlight-pillar" {
  title           = "Northlight paraffin, pillar grade"
  family          = "paraffin"
  suits           = ["pillar", "votive"]
  melt_to         = "180 to 190 °F"
  pour_at         = "168 to 182 °F"
  never_above     = "240 °F"
  flash_point     = "450 °F"
  fragrance_limit = "6 % of wax"
  density         = "0.91 g/mL"
  shrinkage       = "12 %"
  source          = "supplier's sheet, 2026-03"
}
`,
		Attrs: []*AttrSpec{
			titleAttr(`"Northlight paraffin, pillar grade"`),
			{Name: "family", Type: Choice, Choices: waxFamilies, Example: `"paraffin"`,
				Doc: "What it is made of. Wicks are made for families, and common figures stand in for what the sheet leaves out."},
			{Name: "suits", Type: Choices, Choices: waxUses, Example: `["pillar", "votive"]`,
				Doc: "What the supplier sells it for. A pillar wax in glass pulls away and can crack it; a container wax does not stand on its own."},
			{Name: "tested_for", Type: Choices, Choices: waxUses, Example: `["container"]`,
				Doc: "Uses beyond `suits` that this shop has tried to its own satisfaction. Keep a trial that says how."},
			temperatureAttr("melt_to", `"180 to 190 °F"`, "How hot the supplier wants it melted."),
			temperatureAttr("add_fragrance_at", `"175 to 185 °F"`, "How hot the supplier wants it when fragrance goes in."),
			temperatureAttr("pour_at", `"168 to 182 °F"`, "How hot the supplier wants it poured."),
			{Name: "never_above", Type: Amount, Dims: dimTemperature, Example: `"240 °F"`,
				Doc: "The supplier's ceiling: the wax is spoiled or worse above it. No step may be hotter."},
			{Name: "flash_point", Type: Amount, Dims: dimTemperature, Example: `"450 °F"`,
				Doc: "Where its vapor can be lit by a flame, from the safety data sheet. Every step is kept well below it."},
			temperatureAttr("congeals_at", `"140 °F"`, "Where it begins to set. The times for relief holes, second pours and unmolding are modeled from it."),
			{Name: "fragrance_limit", Type: Amount, Dims: dimProportion, Example: `"6 % of wax"`,
				Doc: "The most fragrance it holds. Say of what, as the sheet does; what it cannot hold sweats out and can flare."},
			{Name: "density", Type: Amount, Dims: dimDensity, Example: `"0.91 g/mL"`,
				Doc: "Solid, at room temperature. How many candles a batch fills rests on it."},
			{Name: "shrinkage", Type: Amount, Dims: dimShare, Range: true, Example: `"12 %"`,
				Doc: "How much of its volume it loses from the pour to room temperature. What shrinks much needs a second pour."},
			{Name: "one_pour", Type: YesNo, Example: `true`,
				Doc: "Whether the supplier sells it as needing no second pour."},
			timeAttr("cure", `"1 to 3 d"`, "How long a scented candle of it should rest before it is burned or sold."),
			{Name: "conductivity", Type: Figure, Unit: "W/mK", Example: `"0.24 W/mK"`,
				Doc: "How well the solid wax conducts heat, for the cooling model."},
			{Name: "heat_capacity", Type: Figure, Unit: "kJ/kgK", Example: `"2.2 kJ/kgK"`,
				Doc: "How much heat the solid wax takes per degree, for the cooling model."},
			{Name: "latent_heat", Type: Figure, Unit: "kJ/kg", Example: `"200 kJ/kg"`,
				Doc: "How much heat the wax gives off as it sets, for the cooling model."},
			sourceAttr(), notesAttr(`"Keep the sack closed; it takes up dust."`),
		},
		Blocks: []*BlockSpec{partSpec()},
	}
}

func partSpec() *BlockSpec {
	return &BlockSpec{
		ID: "wax part", Name: "part", Label: Refers, LabelRefers: []string{"wax", "additive"},
		Doc:     "What a house blend is made of, one block for each wax or additive in it. The blend's own tested figures still count, not those of its parts.",
		Example: "part \"northlight-pillar\" {\n  share = \"70 %\"\n}\n",
		Attrs: []*AttrSpec{
			{Name: "share", Type: Amount, Dims: dimShare, Required: true, Example: `"70 %"`,
				Doc: "How much of the blend it is, by weight. The parts together are 100 %."},
		},
	}
}

// mixedInAttrs are what fragrances, dyes and additives have in common: they
// are mixtures stirred into wax, with a safety data sheet each.
func mixedInAttrs() []*AttrSpec {
	return []*AttrSpec{
		{Name: "density", Type: Amount, Dims: dimDensity, Example: `"0.96 g/mL"`,
			Doc: "Weight per volume at room temperature. Without it an amount by volume cannot be weighed."},
		{Name: "flash_point", Type: Amount, Dims: dimTemperature, Example: `"190 °F"`,
			Doc: "Where vapor over the neat liquid can be lit by a flame, from the safety data sheet. It is about the liquid by itself near a flame, not the heat at which scent is lost."},
		{Name: "gel_safe", Type: YesNo, Example: `true`,
			Doc: "Whether the supplier declares it fit for gel wax. In gel, what does not mix gathers and can flash over."},
		{Name: "water_based", Type: YesNo, Example: `false`,
			Doc: "Whether it carries water. Water in hot wax boils at once and throws the wax about."},
		{Name: "components", Type: Choice, Choices: []string{"none classified"}, Example: `"none classified"`,
			Doc: "Write \"none classified\" where the safety data sheet lists no classified substance, in place of component blocks. Left out with no component, its hazards are unknown."},
		{Name: "sheet", Type: Line, Example: `"safety data sheet 4, 2026-02-10"`,
			Doc: "Which safety data sheet the figures are from: name or number, and date."},
		{Name: "certificate", Type: Line, Example: `"category 12, amendment 51"`,
			Doc: "Which certificate of use is on file: its category and amendment. Category 12 is the one for candles."},
		sourceAttr(), notesAttr(`"Keep it dark and cool."`),
	}
}

func fragranceSpec() *BlockSpec {
	return &BlockSpec{
		ID: "fragrance", Name: "fragrance", Label: Defines, Stock: true,
		Doc: "A fragrance on the shelf. Its components decide which hazard label a scented candle needs in the EU and the UK.",
		Example: `fragrance "tide-and-thyme" {
  title           = "Tide and thyme"
  flash_point     = "190 °F"
  density         = "0.96 g/mL"
  most_in_candles = "25 % of total"

  component "linalool" {
    cas     = "78-70-6"
    share   = "12 %"
    hazards = ["Skin Sens. 1B H317", "Skin Irrit. 2 H315", "Eye Irrit. 2 H319"]
  }
}
`,
		Attrs: append([]*AttrSpec{
			titleAttr(`"Tide and thyme"`),
			{Name: "most_in_candles", Type: Amount, Dims: dimProportion, Example: `"25 % of total"`,
				Doc: "The most that the supplier's certificate allows in candles. It is of the finished candle, and it is not what the wax holds."},
		}, mixedInAttrs()...),
		Blocks: []*BlockSpec{componentSpec("fragrance")},
	}
}

func dyeSpec() *BlockSpec {
	return &BlockSpec{
		ID: "dye", Name: "dye", Label: Defines, Stock: true,
		Doc:     "A dye on the shelf. Too much of it clogs the wick.",
		Example: "dye \"madder\" {\n  title = \"Madder red\"\n  color = \"#b5473c\"\n  limit = \"0.1 % of wax\"\n  drop  = \"0.03 g\"\n}\n",
		Attrs: append([]*AttrSpec{
			titleAttr(`"Madder red"`),
			{Name: "color", Type: Color, Example: `"#b5473c"`,
				Doc: "Roughly the color it gives, for swatches."},
			{Name: "limit", Type: Amount, Dims: dimProportion, Example: `"0.1 % of wax"`,
				Doc: "The most the supplier allows."},
			{Name: "drop", Type: Amount, Dims: dimWeight, Example: `"0.03 g"`,
				Doc: "What one drop weighs. Count fifty onto the scale and divide."},
			{Name: "piece", Type: Amount, Dims: dimWeight, Example: `"1.2 g"`,
				Doc: "What one chip, block or piece weighs."},
		}, mixedInAttrs()...),
		Blocks: []*BlockSpec{componentSpec("dye")},
	}
}

func additiveSpec() *BlockSpec {
	return &BlockSpec{
		ID: "additive", Name: "additive", Label: Defines, Stock: true,
		Doc:     "A hardener, an oil or a stabilizer on the shelf.",
		Example: "additive \"stearin\" {\n  title = \"Stearin\"\n  usual = \"5 to 10 % of wax\"\n}\n",
		Attrs: append([]*AttrSpec{
			titleAttr(`"Stearin"`),
			{Name: "usual", Type: Amount, Dims: dimProportion, Range: true, Example: `"5 to 10 % of wax"`,
				Doc: "How much the supplier recommends. More of it changes how the candle burns."},
		}, mixedInAttrs()...),
		Blocks: []*BlockSpec{componentSpec("additive")},
	}
}

func componentSpec(of string) *BlockSpec {
	return &BlockSpec{
		ID: of + " component", Name: "component", Label: FreeLabel,
		Doc:     "A classified substance from section 3 of the safety data sheet. What the finished candle must carry on its label is summed from these.",
		Example: "component \"linalool\" {\n  cas     = \"78-70-6\"\n  share   = \"12 %\"\n  hazards = [\"Skin Sens. 1B H317\"]\n}\n",
		Attrs: []*AttrSpec{
			{Name: "cas", Type: Line, Example: `"78-70-6"`,
				Doc: "Its CAS number, which stays the same whatever the substance is called."},
			{Name: "share", Type: Amount, Dims: dimShare, Range: true, Required: true, Example: `"10 to 25 %"`,
				Doc: "How much of the " + of + " it is, by weight. A range counts at its upper end."},
			{Name: "hazards", Type: Texts, Required: true, Example: `["Skin Sens. 1B H317", "Skin Irrit. 2 H315"]`,
				Doc: "Its classification as the sheet gives it: class, category and statement, one entry each. An empty list says that it has none."},
			{Name: "limit", Type: Amount, Dims: dimShare, Example: `"0.01 %"`,
				Doc: "Its specific concentration limit, where the sheet gives one: it takes the place of the general limit."},
			{Name: "m_factor", Type: Whole, Example: `10`,
				Doc: "Its multiplying factor for the water environment, where the sheet gives one."},
			{Name: "m_factor_chronic", Type: Whole, Example: `10`,
				Doc: "The factor for long-term harm to water, where the sheet gives a second one. Left out, `m_factor` serves for both."},
			{Name: "ate", Type: Texts, Example: `["oral 500 mg/kg", "vapor 3 mg/L"]`,
				Doc: "Its acute toxicity estimates as the sheet gives them, one entry a route: oral, dermal, vapor or dust."},
		},
	}
}

func moldSpec() *BlockSpec {
	return &BlockSpec{
		ID: "mold", Name: "mold", Label: Defines, Stock: true,
		Doc: "A mold on the shelf: the candle leaves it. Give its shape and size, or what it holds.",
		Example: `mold "pillar-3x6" {
  title     = "Round pillar 3 × 6 in"
  material  = "metal"
  shape     = "cylinder"
  diameter  = "3 in"
  height    = "6 in"
  wick_hole = true
}
`,
		Attrs: []*AttrSpec{
			titleAttr(`"Round pillar 3 × 6 in"`),
			{Name: "makes", Type: Choice, Choices: []string{"pillar", "votive", "taper", "melt"}, Example: `"votive"`,
				Doc: "What comes out of it; left out, a pillar."},
			{Name: "shape", Type: Choice, Choices: []string{"cylinder", "cone", "block", "sphere", "other"}, Example: `"cylinder"`,
				Doc: "What its inside looks like, to reckon what it holds. Where that is only roughly right, fill it with water and write `holds`."},
			{Name: "diameter", Type: Amount, Dims: dimLength, Example: `"3 in"`,
				Doc: "Its inside diameter, at the widest. The wick is chosen by it."},
			{Name: "width", Type: Amount, Dims: dimLength, Example: `"3 in"`,
				Doc: "A block's shorter side, inside. The wick is chosen by it."},
			{Name: "length", Type: Amount, Dims: dimLength, Example: `"6 in"`,
				Doc: "A block's longer side, inside; left out, it is square."},
			{Name: "height", Type: Amount, Dims: dimLength, Example: `"6 in"`,
				Doc: "Its inside height."},
			{Name: "holds", Type: Amount, Dims: dimVolume, Example: `"680 mL"`,
				Doc: "What it holds, measured by filling it with water. It wins over the shape."},
			{Name: "wick_hole", Type: YesNo, Example: `true`,
				Doc: "Whether it has an open wick hole, which must be sealed before the pour. False where a wick pin or a self-closing slit fills it; left out, the sealing cannot be checked."},
			{Name: "material", Type: Choice, Example: `"metal"`, Choices: []string{"metal", "silicone", "polycarbonate", "acrylic", "polypropylene", "polyethylene",
				"polystyrene", "printed PLA", "printed PETG", "printed ABS", "rubber", "glass", "other"},
				Doc: "What it is made of. A mold that softens lets hot wax go."},
			{Name: "softens_at", Type: Amount, Dims: dimTemperature, Example: `"250 °F"`,
				Doc: "Where its maker says it softens, if it does."},
			sourceAttr(), notesAttr(`"The seam is on the long side; turn it to the back."`),
		},
	}
}

func containerSpec() *BlockSpec {
	return &BlockSpec{
		ID: "container", Name: "container", Label: Defines, Stock: true,
		Doc: "A jar, a tin or another vessel on the shelf that the candle stays in. It must stand the heat of a flame for hours and to the last half inch.",
		Example: `container "tumbler-10" {
  title            = "Clear tumbler, 10 oz"
  kind             = "jar"
  diameter         = "2.9 in"
  height           = "3.5 in"
  holds            = "300 mL"
  material         = "glass"
  made_for_candles = true
}
`,
		Attrs: []*AttrSpec{
			titleAttr(`"Clear tumbler, 10 oz"`),
			{Name: "kind", Type: Choice, Choices: []string{"jar", "tin", "tealight cup", "votive glass", "bowl", "clamshell"}, Example: `"jar"`,
				Doc: "What sort of vessel it is, which says what is made in it."},
			{Name: "diameter", Type: Amount, Dims: dimLength, Example: `"2.9 in"`,
				Doc: "Its inside diameter where the wax ends. The wick is chosen by it."},
			{Name: "opening", Type: Amount, Dims: dimLength, Example: `"2.7 in"`,
				Doc: "Its inside diameter at the rim. A narrow neck gathers heat."},
			{Name: "height", Type: Amount, Dims: dimLength, Example: `"3.5 in"`,
				Doc: "Its inside height to the rim."},
			{Name: "holds", Type: Amount, Dims: dimVolume, Example: `"300 mL"`,
				Doc: "What it holds to the fill line, measured with water."},
			{Name: "material", Type: Choice, Example: `"glass"`, Choices: []string{"glass", "tin", "aluminum", "steel", "ceramic", "concrete", "wood", "polycarbonate", "other plastic", "shell"},
				Doc: "What it is made of. Wood and shell can burn, unsealed concrete soaks up wax, and plastic melts."},
			{Name: "made_for_candles", Type: YesNo, Example: `true`,
				Doc: "Whether its maker sells it for candles and rates it for that heat. A drinking glass looks the same and may crack."},
			{Name: "thermal_shock", Type: Amount, Dims: dimDifference, Example: `"90 °F"`,
				Doc: "The sudden difference in temperature that its maker says it withstands."},
			{Name: "softens_at", Type: Amount, Dims: dimTemperature, Example: `"280 °F"`,
				Doc: "Where its maker says it softens, if it does."},
			{Name: "finish", Type: Choice, Choices: []string{"plain", "glazed", "sealed", "painted", "varnished", "papered"}, Example: `"sealed"`,
				Doc: "How its surface is finished; plain is bare glass or metal. Concrete must be sealed; paint, varnish and paper can burn."},
			sourceAttr(), notesAttr(`"Wash and dry before use; they come dusty."`),
		},
	}
}

func taperSpec() *BlockSpec {
	return &BlockSpec{
		ID: "taper", Name: "taper", Label: Defines, Stock: true,
		Doc:     "A size of taper built up by dipping, with no vessel.",
		Example: "taper \"ten-inch\" {\n  title    = \"Ten-inch taper\"\n  diameter = \"7/8 in\"\n  length   = \"10 in\"\n}\n",
		Attrs: []*AttrSpec{
			titleAttr(`"Ten-inch taper"`),
			{Name: "diameter", Type: Amount, Dims: dimLength, Example: `"7/8 in"`,
				Doc: "Its diameter at the base. The wick is chosen by it."},
			{Name: "length", Type: Amount, Dims: dimLength, Example: `"10 in"`,
				Doc: "Its length without the wick."},
			notesAttr(`"Fits the usual holders."`),
		},
	}
}

func toppingSpec() *BlockSpec {
	return &BlockSpec{
		ID: "topping", Name: "topping", Label: Defines, Stock: true,
		Doc:     "Something on the shelf that is laid on or set into candles.",
		Example: "topping \"sea-lavender\" {\n  title = \"Dried sea lavender\"\n  kind  = \"botanical\"\n}\n",
		Attrs: []*AttrSpec{
			titleAttr(`"Dried sea lavender"`),
			{Name: "kind", Type: Choice, Choices: []string{"botanical", "paper", "ribbon", "glitter", "mica", "crystal", "wax embed"}, Example: `"botanical"`,
				Doc: "What it is. Plants, paper and ribbon burn; loose glitter and crystals can clog or carry the flame."},
			sourceAttr(), notesAttr(`"Dried for two weeks."`),
		},
	}
}

func potSpec() *BlockSpec {
	return &BlockSpec{
		ID: "pot", Name: "pot", Label: Defines, Stock: true,
		Doc:     "A melting pot in the workshop.",
		Example: "pot \"big-pot\" {\n  title = \"The big melter\"\n  holds = \"6 L\"\n  heat  = \"thermostatic melter\"\n}\n",
		Attrs: []*AttrSpec{
			titleAttr(`"The big melter"`),
			{Name: "holds", Type: Amount, Dims: dimVolume, Example: `"6 L"`,
				Doc: "What it holds to the brim. Three quarters of that is as full as melted wax should stand."},
			{Name: "heat", Type: Choice, Choices: heatSources, Example: `"thermostatic melter"`,
				Doc: "What heats it. A melt step that says `over` wins."},
			notesAttr(`"The dial reads high; trust the thermometer in the wax."`),
		},
	}
}

func wickSpec() *BlockSpec {
	return &BlockSpec{
		ID: "wick", Name: "wick", Label: Defines, Stock: true,
		Doc: "A wick on the shelf. The wrong size is the commonest fault of a candle: too large it soots and overheats, too small it drowns.",
		Example: `wick "flat-braid-24" {
  title        = "Flat braid 24"
  construction = "flat braid"
  core         = "none"
  burns        = "2.75 to 3.25 in"
  families     = ["paraffin", "stearin"]
  trim         = "1/4 in"
}
`,
		Attrs: []*AttrSpec{
			titleAttr(`"Flat braid 24"`),
			{Name: "construction", Type: Choice, Choices: []string{"flat braid", "square braid", "cored", "wooden"}, Example: `"flat braid"`,
				Doc: "How it is made."},
			{Name: "core", Type: Choice, Choices: []string{"none", "cotton", "paper", "zinc", "tin", "lead"}, Example: `"zinc"`,
				Doc: "What stiffens it. Lead is banned in the United States: it goes into the air of the room."},
			{Name: "lead_at_most", Type: Amount, Dims: dimShare, Example: `"0.01 %"`,
				Doc: "The most lead its maker states, by weight of the metal core. Over 0.06 % it is banned in the United States (16 CFR 1500.17(a)(13))."},
			{Name: "sold_loose", Type: YesNo, Example: `false`,
				Doc: "Whether the shop also sells it by itself."},
			{Name: "conformity", Type: Line, Example: `"Conforms to 16 CFR 1500.17(a)(13)"`,
				Doc: "The statement of conformity printed on the pack of loose metal-cored wicks, where there is one."},
			lengthAttr("burns", `"2.75 to 3.25 in"`, "The diameters that one candle with one wick may have, from the maker's chart. Several wicks are judged at the diameter over the square root of their number."),
			{Name: "families", Type: Choices, Choices: waxFamilies, Example: `["paraffin", "stearin"]`,
				Doc: "The waxes it is made for."},
			lengthAttr("trim", `"1/4 in"`, "How long it should be cut for each burn, from its maker."),
			{Name: "tab", Type: YesNo, Example: `true`,
				Doc: "Whether a metal tab is crimped on. In a container or a tealight the tab holds it upright and ends the burn above the bottom."},
			sourceAttr(), notesAttr(`"Comes on a spool of 100 m."`),
		},
	}
}

func sealSpec() *BlockSpec {
	return &BlockSpec{
		ID: "seal", Name: "seal", Label: Defines, Stock: true,
		Doc:     "What closes a wick hole or holds a wick tab down.",
		Example: "seal \"rubber-plug\" {\n  title    = \"Rubber plug\"\n  kind     = \"plug\"\n  holds_to = \"350 °F\"\n}\n",
		Attrs: []*AttrSpec{
			titleAttr(`"Rubber plug"`),
			{Name: "kind", Type: Choice, Choices: []string{"plug", "putty", "screw", "tape", "hot-melt glue", "magnet", "sticker", "silicone"}, Example: `"plug"`,
				Doc: "What it is. Hot-melt glue softens far below the heat of a pour."},
			{Name: "holds_to", Type: Amount, Dims: dimTemperature, Example: `"350 °F"`,
				Doc: "The heat its maker says it holds to. Every pour over it must be cooler."},
			sourceAttr(), notesAttr(`"Press it onto dry, clean metal."`),
		},
	}
}

func labelSpec() *BlockSpec {
	return &BlockSpec{
		ID: "label", Name: "label", Label: Defines, Stock: true,
		Doc: "A printed label on the shelf and what stands on it. All labels on one candle count together.",
		Example: `label "us-base" {
  title      = "Base label, US"
  markets    = ["US"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children"]
  net_weight = "1 lb 5 oz (595 g)"
}
`,
		Attrs: []*AttrSpec{
			titleAttr(`"Base label, US"`),
			{Name: "markets", Type: Choices, Choices: marketNames, Example: `["US"]`,
				Doc: "The markets it is made for."},
			languagesAttr("The languages it is printed in, by their two letters."),
			{Name: "signal", Type: Choice, Choices: []string{"WARNING", "Warning", "Danger"}, Example: `"WARNING"`,
				Doc: "Its signal word. In the US a candle's cautions follow WARNING in capitals; in the EU and the UK the word comes from the hazard classification."},
			{Name: "cautions", Type: Choices, Choices: CautionNames(), Example: `["burn within sight", "keep away from things that catch fire", "keep away from children"]`,
				Doc: "Which cautions stand on it, in words or as the standard's sign. The page of the format lists them all at its end."},
			{Name: "net_weight", Type: Line, Example: `"1 lb 5 oz (595 g)"`,
				Doc: "The net weight as printed, without jar, lid or box. The US wants ounces and grams both."},
			{Name: "count_and_length", Type: Line, Example: `"2 tapers, 10 in (254 mm)"`,
				Doc: "How many and how long, as printed: for tapers in the US it stands in place of the weight (16 CFR 501.7)."},
			{Name: "pictograms", Type: Choices, Example: `["GHS07"]`,
				Choices: []string{"GHS01", "GHS02", "GHS03", "GHS04", "GHS05", "GHS06", "GHS07", "GHS08", "GHS09"},
				Doc:     "The hazard pictograms on it, by their codes (Regulation (EC) No 1272/2008, Annex V)."},
			{Name: "hazards", Type: Texts, Example: `["H317", "EUH208"]`,
				Doc: "The codes of the hazard statements printed on it."},
			{Name: "names", Type: Texts, Example: `["linalool"]`,
				Doc: "The substances it names. People with an allergy look for these."},
			{Name: "precautions", Type: Texts, Example: `["P101", "P102", "P501"]`,
				Doc: "The codes of the precautionary statements printed on it."},
			{Name: "ufi", Type: Line, Example: `"UFI: K7C0-40W5-T00A-93GX"`,
				Doc: "The unique formula identifier printed on it. The EU wants one on candles that are classified for health (Regulation (EC) No 1272/2008, Annex VIII); another formulation needs another."},
			{Name: "contact", Type: Line, Example: `"Larkspur Quay Candleworks, 4 Quay Road, Larkspur"`,
				Doc: "Who made it and where to reach them, as printed."},
			{Name: "lot", Type: Line, Example: `"L-2026-41"`,
				Doc: "The lot or batch it belongs to, as printed or as it is stamped on. Without it nothing can be called back."},
			notesAttr(`"Reprint when the address changes."`),
		},
	}
}
