recipe "driftwood-jar" {
  title    = "Driftwood, fig and salt"
  makes    = "jar"
  made_for = "sale"
  pot      = "melter-8"

  wax "lagoon-coconut" {
    weight = "2 lb 15 oz"
  }
  fragrance "fig-and-salt" {
    load = "8 % of wax"
  }

  container "tumbler-10" {
    count = 6
    wick  = "wooden-half-inch"
    fill  = "260 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "melt" {
    to   = "174 °F"
    over = "thermostatic melter"
  }
  step "add fragrance" {
    at   = "166 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "140 °F"
  }
  step "cool" {
    for = "24 h"
  }
  step "cure" {
    for = "12 days"
  }
  step "trim wick" {
    to = "3/16 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "base"
  }

  test_burn "2026-09-21" {
    formula    = "h9000we-kps79k"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.4 in"
    pool_depth = "5/16 in"
    flame      = "0.75 in"
    wall       = "117 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-29" {
    formula    = "h9000we-kps79k"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "3/8 in"
    flame      = "0.85 in"
    wall       = "125 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "h9000we-kps79k"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.35 in"
    pool_depth = "5/16 in"
    flame      = "0.8 in"
    wall       = "120 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-29" {
    formula    = "h9000we-kps79k"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "3/8 in"
    flame      = "0.9 in"
    wall       = "128 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "h9000we-kps79k"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.3 in"
    pool_depth = "5/16 in"
    flame      = "0.85 in"
    wall       = "123 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-29" {
    formula    = "h9000we-kps79k"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "3/8 in"
    flame      = "0.95 in"
    wall       = "131 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
