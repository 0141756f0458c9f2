recipe "clover-jar" {
  title    = "Clover jar, plain beeswax"
  makes    = "jar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "clover-beeswax" {
    weight = "2 lb 15 oz"
  }

  container "straight-jar-8" {
    count = 6
    wick  = "square-braid-6-tab"
    fill  = "225 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "warm container" {
    to = "115 °F"
  }
  step "melt" {
    to   = "172 °F"
    over = "water bath"
  }
  step "pour" {
    at = "161 °F"
  }
  step "cool" {
    for = "24 h"
    say = "Under a box: beeswax that cools fast cracks."
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "base"
  }

  test_burn "2026-06-15" {
    formula    = "a0000qj-08a9se"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.2 in"
    pool_depth = "1/4 in"
    flame      = "1.05 in"
    wall       = "127 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-23" {
    formula    = "a0000qj-08a9se"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    wall       = "135 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-15" {
    formula    = "a0000qj-08a9se"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.15 in"
    pool_depth = "1/4 in"
    flame      = "1.1 in"
    wall       = "130 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-23" {
    formula    = "a0000qj-08a9se"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.25 in"
    wall       = "138 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-15" {
    formula    = "a0000qj-08a9se"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.1 in"
    pool_depth = "1/4 in"
    flame      = "1.15 in"
    wall       = "133 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-06-23" {
    formula    = "a0000qj-08a9se"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.3 in"
    wall       = "141 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
