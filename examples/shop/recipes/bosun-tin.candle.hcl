recipe "bosun-tin" {
  title    = "Bosun's tin, cedar slip"
  makes    = "jar"
  made_for = "sale"
  pot      = "melter-8"

  wax "headland-rapeseed" {
    weight = "3 lb 11 oz"
  }
  fragrance "cedar-slip" {
    load = "7 % of wax"
  }

  container "tin-8" {
    count = 10
    wick  = "cored-paper-36"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "melt" {
    to   = "174 °F"
    over = "thermostatic melter"
  }
  step "add fragrance" {
    at   = "168 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "136 °F"
  }
  step "cool" {
    for = "24 h"
  }
  step "cure" {
    for = "10 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-tin"
    on    = "base"
  }

  test_burn "2026-09-28" {
    formula    = "2q000gb-hzatpm"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.5 in"
    pool_depth = "5/16 in"
    flame      = "0.9 in"
    wall       = "125 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-04" {
    formula    = "2q000gb-hzatpm"
    candle     = "A"
    cycle      = 7
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.9 in"
    pool_depth = "3/8 in"
    flame      = "1.05 in"
    wall       = "133 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-28" {
    formula    = "2q000gb-hzatpm"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.45 in"
    pool_depth = "5/16 in"
    flame      = "0.95 in"
    wall       = "128 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-04" {
    formula    = "2q000gb-hzatpm"
    candle     = "B"
    cycle      = 7
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.9 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "136 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-28" {
    formula    = "2q000gb-hzatpm"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.4 in"
    pool_depth = "5/16 in"
    flame      = "1 in"
    wall       = "131 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-04" {
    formula    = "2q000gb-hzatpm"
    candle     = "C"
    cycle      = 7
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.9 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    wall       = "139 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
