recipe "skep-beeswax" {
  title    = "Skep, plain beeswax"
  makes    = "pillar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "clover-beeswax" {
    weight = "2 lb 1 oz"
  }

  mold "skep" {
    count = 4
    wick  = "square-braid-5"
  }

  step "melt" {
    to   = "174 °F"
    over = "water bath"
  }
  step "pour" {
    at    = "160 °F"
    leave = "1/4 in"
  }
  step "relief holes" {
    after = "1 h 30 min"
    count = 3
  }
  step "second pour" {
    after = "30 min"
    at    = "166 °F"
  }
  step "unmold" {
    after = "18 h"
  }
  step "trim base" {}
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-small"
    on    = "base"
  }

  test_burn "2026-06-08" {
    formula    = "a0000qp-xq6w43"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.3 in"
    pool_depth = "1/4 in"
    flame      = "1.05 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-16" {
    formula    = "a0000qp-xq6w43"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.5 in"
    pool_depth = "5/16 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-08" {
    formula    = "a0000qp-xq6w43"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.25 in"
    pool_depth = "1/4 in"
    flame      = "1.1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-16" {
    formula    = "a0000qp-xq6w43"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.5 in"
    pool_depth = "5/16 in"
    flame      = "1.2 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-08" {
    formula    = "a0000qp-xq6w43"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.2 in"
    pool_depth = "1/4 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-16" {
    formula    = "a0000qp-xq6w43"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.5 in"
    pool_depth = "5/16 in"
    flame      = "1.25 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
