recipe "winter-blend" {
  title    = "Winter beacon, clove bell"
  makes    = "pillar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "425 g"
  }
  wax "frostfield-stearin" {
    weight = "75 g"
  }
  fragrance "clove-bell" {
    load = "3 % of wax"
  }

  mold "beacon-cone" {
    count = 2
    wick  = "flat-braid-24"
  }

  step "seal wick hole" {
    with = "foil-tape"
  }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "182 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "174 °F"
    leave = "3/8 in"
  }
  step "relief holes" {
    after = "2 h"
    count = 4
  }
  step "second pour" {
    after = "1 h"
    at    = "180 °F"
  }
  step "unmold" {
    after = "16 h"
  }
  step "cure" {
    for = "4 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-small"
    on    = "base"
  }

  test_burn "2026-08-31" {
    formula    = "x70001n-rkeqeh"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.4 in"
    pool_depth = "5/16 in"
    flame      = "1.05 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-08" {
    formula    = "x70001n-rkeqeh"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-31" {
    formula    = "x70001n-rkeqeh"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.35 in"
    pool_depth = "5/16 in"
    flame      = "1.1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-08" {
    formula    = "x70001n-rkeqeh"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.25 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-31" {
    formula    = "x70001n-rkeqeh"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.3 in"
    pool_depth = "5/16 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-08" {
    formula    = "x70001n-rkeqeh"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.3 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
