recipe "tideline-layers" {
  title    = "Tideline pillar, two layers"
  makes    = "pillar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "830 g"
  }
  fragrance "tide-and-thyme" {
    load = "4 % of wax"
  }
  dye "deep-water" {
    amount = "10 drops"
  }

  mold "pillar-3x4" {
    count = 2
    wick  = "flat-braid-24"
  }

  step "seal wick hole" {
    with = "wick-putty"
  }

  # The sand: plain wax, to half the height.
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "182 °F"
    stir = "2 min"
    say  = "Into the whole batch; half of it stays in the pot."
  }
  step "pour" {
    at    = "176 °F"
    leave = "2 in"
  }

  # The sea: once the sand gives like firm rubber.
  step "melt" {
    after = "45 min"
    to    = "184 °F"
    over  = "water bath"
  }
  step "add dye" {
    dye = "deep-water"
  }
  step "pour" {
    at    = "177 °F"
    leave = "3/8 in"
  }
  step "relief holes" {
    after = "2 h"
    count = 4
    depth = "1 1/2 in"
  }
  step "second pour" {
    after = "45 min"
    at    = "182 °F"
  }
  step "unmold" {
    after = "14 h"
  }
  step "cure" {
    for = "3 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-pillar"
    on    = "base"
  }

  test_burn "2026-09-07" {
    formula    = "440j0cn-s2jqcd"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "440j0cn-s2jqcd"
    candle     = "A"
    cycle      = 15
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.25 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-07" {
    formula    = "440j0cn-s2jqcd"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.55 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "440j0cn-s2jqcd"
    candle     = "B"
    cycle      = 15
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.3 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-07" {
    formula    = "440j0cn-s2jqcd"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.5 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "440j0cn-s2jqcd"
    candle     = "C"
    cycle      = 15
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.35 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
