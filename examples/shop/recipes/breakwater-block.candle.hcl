recipe "breakwater-block" {
  title    = "Breakwater block, cedar slip"
  makes    = "pillar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "millrace-pillar" {
    weight = "2 lb 15 oz"
  }
  fragrance "cedar-slip" {
    load = "5 % of wax"
  }
  additive "hard-crystal" {
    load = "1 % of wax"
  }
  dye "sea-glass" {
    amount = "2 pieces"
  }

  mold "block-3x5" {
    count = 2
    wick  = "square-braid-4"
  }

  step "seal wick hole" {
    with = "wick-putty"
  }
  step "warm mold" {
    to = "110 °F"
  }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add dye" {
    dye = "sea-glass"
  }
  step "add additive" {
    additive = "hard-crystal"
  }
  step "add fragrance" {
    at   = "182 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "170 °F"
  }
  step "unmold" {
    after = "24 h"
  }
  step "cure" {
    for = "7 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-block"
    on    = "base"
  }

  test_burn "2026-08-24" {
    formula    = "1dme0mt-k1xy2k"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.6 in"
    pool_depth = "5/16 in"
    flame      = "1.05 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-16" {
    formula    = "1dme0mt-k1xy2k"
    candle     = "A"
    cycle      = 24
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-24" {
    formula    = "1dme0mt-k1xy2k"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.55 in"
    pool_depth = "5/16 in"
    flame      = "1.1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-16" {
    formula    = "1dme0mt-k1xy2k"
    candle     = "B"
    cycle      = 24
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-24" {
    formula    = "1dme0mt-k1xy2k"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.5 in"
    pool_depth = "5/16 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-16" {
    formula    = "1dme0mt-k1xy2k"
    candle     = "C"
    cycle      = 24
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "3/8 in"
    flame      = "1.25 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
