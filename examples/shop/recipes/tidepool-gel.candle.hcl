recipe "tidepool-gel" {
  title    = "Tide pool, amber lantern in gel"
  makes    = "jar"
  made_for = "sale"
  pot      = "melter-8"

  wax "clearwater-gel" {
    weight = "805 g"
  }
  fragrance "amber-lantern" {
    load = "3 % of wax"
  }
  dye "deep-water" {
    amount = "4 drops"
  }

  container "straight-jar-8" {
    count = 4
    wick  = "cored-zinc-51"
    fill  = "235 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "warm container" {
    to = "125 °F"
  }
  step "melt" {
    to   = "203 °F"
    over = "thermostatic melter"
  }
  step "add dye" {
    dye = "deep-water"
  }
  step "add fragrance" {
    at   = "198 °F"
    stir = "3 min"
  }
  step "pour" {
    at  = "190 °F"
    say = "Slowly, down the side, so that no air goes with it."
  }
  step "cool" {
    for = "12 h"
  }
  step "cure" {
    for = "2 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "base"
  }

  test_burn "2026-07-20" {
    formula    = "e80e0dv-51gecv"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.2 in"
    pool_depth = "1/4 in"
    flame      = "1.05 in"
    wall       = "130 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-29" {
    formula    = "e80e0dv-51gecv"
    candle     = "A"
    cycle      = 10
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "5/16 in"
    flame      = "1.15 in"
    wall       = "138 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-20" {
    formula    = "e80e0dv-51gecv"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.15 in"
    pool_depth = "1/4 in"
    flame      = "1.1 in"
    wall       = "133 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-29" {
    formula    = "e80e0dv-51gecv"
    candle     = "B"
    cycle      = 10
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "5/16 in"
    flame      = "1.2 in"
    wall       = "141 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-20" {
    formula    = "e80e0dv-51gecv"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.1 in"
    pool_depth = "1/4 in"
    flame      = "1.15 in"
    wall       = "136 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-29" {
    formula    = "e80e0dv-51gecv"
    candle     = "C"
    cycle      = 10
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "5/16 in"
    flame      = "1.25 in"
    wall       = "144 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
