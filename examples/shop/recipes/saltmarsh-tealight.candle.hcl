recipe "saltmarsh-tealight" {
  title    = "Salt marsh tealight"
  makes    = "tealight"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "millrace-soy" {
    weight = "10.5 oz"
  }
  fragrance "kelp-and-lime" {
    load = "5 % of wax"
  }

  container "tealight-cup" {
    count = 24
    wick  = "cored-paper-20"
  }

  step "melt" {
    to   = "176 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "170 °F"
    stir = "2 min"
  }
  step "set wick" {
    with = "tab-sticker"
  }
  step "pour" {
    at = "138 °F"
  }
  step "cool" {
    for = "4 h"
  }
  step "cure" {
    for = "7 days"
  }
  step "attach label" {
    label = "us-tealight"
    on    = "box"
  }

  test_burn "2026-10-05" {
    formula    = "at000d2-55ky01"
    candle     = "A"
    cycle      = 1
    burned_for = "3 h 50 min"
    to_end     = true
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.8 in"
    wall       = "129 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-05" {
    formula    = "at000d2-55ky01"
    candle     = "B"
    cycle      = 1
    burned_for = "3 h 45 min"
    to_end     = true
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.85 in"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-05" {
    formula    = "at000d2-55ky01"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = true
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.9 in"
    wall       = "135 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
