recipe "fogbank-soy" {
  title    = "Fog bank, rain on slate"
  makes    = "jar"
  made_for = "sale"
  pot      = "melter-8"

  wax "millrace-soy" {
    weight = "3 lb 8 oz"
  }
  fragrance "rain-on-slate" {
    load = "8 % of wax"
  }

  container "straight-jar-8" {
    count = 8
    wick  = "cored-cotton-44"
    fill  = "230 mL"
  }

  step "set wick" {
    with = "tab-glue"
  }
  step "melt" {
    to   = "178 °F"
    over = "thermostatic melter"
  }
  step "add fragrance" {
    at   = "174 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "138 °F"
  }
  step "cool" {
    for  = "24 h"
    room = "70 °F"
  }
  step "cure" {
    for = "10 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "side"
  }

  test_burn "2026-10-05" {
    formula    = "aa000vk-e6a0wc"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.3 in"
    pool_depth = "5/16 in"
    flame      = "0.9 in"
    wall       = "115 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-13" {
    formula    = "aa000vk-e6a0wc"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "123 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-05" {
    formula    = "aa000vk-e6a0wc"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.25 in"
    pool_depth = "5/16 in"
    flame      = "0.95 in"
    wall       = "118 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-13" {
    formula    = "aa000vk-e6a0wc"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    wall       = "126 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-05" {
    formula    = "aa000vk-e6a0wc"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.2 in"
    pool_depth = "5/16 in"
    flame      = "1 in"
    wall       = "121 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-13" {
    formula    = "aa000vk-e6a0wc"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    wall       = "129 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
