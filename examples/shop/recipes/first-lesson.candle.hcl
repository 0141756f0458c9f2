# For a class of twelve: each pours one glass and takes it home.
recipe "first-lesson" {
  title    = "First lesson: a small glass"
  makes    = "jar"
  made_for = "class"
  pot      = "melter-8"

  wax "millrace-soy" {
    weight = "36 oz"
  }
  fragrance "harbor-vanilla" {
    load = "6 % of wax"
  }
  dye "deep-water" {
    amount = "8 drops"
  }

  container "votive-glass" {
    count = 12
    wick  = "cored-cotton-28"
  }

  step "note" {
    say = "Long sleeves, hair tied back, a lid within reach of the melter. No water near hot wax."
  }
  step "set wick" {
    with = "tab-glue"
  }
  step "melt" {
    to   = "178 °F"
    over = "thermostatic melter"
  }
  step "add dye" {
    dye = "deep-water"
  }
  step "add fragrance" {
    at   = "172 °F"
    stir = "2 min"
    say  = "Count it aloud together."
  }
  step "pour" {
    at = "138 °F"
  }
  step "cool" {
    for = "3 h"
  }
  step "cure" {
    for = "7 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-votive"
    on    = "base"
  }

  test_burn "2026-07-06" {
    formula    = "af0k0mn-gvzznf"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.7 in"
    pool_depth = "5/16 in"
    flame      = "0.85 in"
    wall       = "118 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-10" {
    formula    = "af0k0mn-gvzznf"
    candle     = "A"
    cycle      = 5
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "1.95 in"
    pool_depth = "3/8 in"
    flame      = "1 in"
    wall       = "126 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-06" {
    formula    = "af0k0mn-gvzznf"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.65 in"
    pool_depth = "5/16 in"
    flame      = "0.9 in"
    wall       = "121 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-10" {
    formula    = "af0k0mn-gvzznf"
    candle     = "B"
    cycle      = 5
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "1.95 in"
    pool_depth = "3/8 in"
    flame      = "1.05 in"
    wall       = "129 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-06" {
    formula    = "af0k0mn-gvzznf"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.6 in"
    pool_depth = "5/16 in"
    flame      = "0.95 in"
    wall       = "124 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-07-10" {
    formula    = "af0k0mn-gvzznf"
    candle     = "C"
    cycle      = 5
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "1.95 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
