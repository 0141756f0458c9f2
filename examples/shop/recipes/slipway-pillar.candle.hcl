# Palm wants it hot and slow: a warm mold, a hot pour, and no draft while the crystals grow.
recipe "slipway-pillar" {
  title    = "Slipway pillar, harbor vanilla"
  makes    = "pillar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "sandbar-palm" {
    weight = "1.2 kg"
  }
  fragrance "harbor-vanilla" {
    load = "4 % of wax"
  }

  mold "pillar-2x5" {
    count = 4
    wick  = "square-braid-2"
  }

  step "seal wick hole" {
    with = "screw-and-putty"
  }
  step "warm mold" {
    to = "140 °F"
  }
  step "melt" {
    to   = "206 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "202 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "197 °F"
    leave = "3/8 in"
  }
  step "relief holes" {
    after = "2 h"
    count = 3
    depth = "3 in"
  }
  step "second pour" {
    after = "30 min"
    at    = "203 °F"
  }
  step "unmold" {
    after = "14 h"
  }
  step "cure" {
    for = "5 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-slim"
    on    = "base"
  }

  test_burn "2026-08-03" {
    formula    = "nd000s3-trpzd6"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.9 in"
    pool_depth = "5/16 in"
    flame      = "0.95 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-15" {
    formula    = "nd000s3-trpzd6"
    candle     = "A"
    cycle      = 13
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-03" {
    formula    = "nd000s3-trpzd6"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.85 in"
    pool_depth = "5/16 in"
    flame      = "1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-15" {
    formula    = "nd000s3-trpzd6"
    candle     = "B"
    cycle      = 13
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-03" {
    formula    = "nd000s3-trpzd6"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.8 in"
    pool_depth = "5/16 in"
    flame      = "1.05 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-15" {
    formula    = "nd000s3-trpzd6"
    candle     = "C"
    cycle      = 13
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
