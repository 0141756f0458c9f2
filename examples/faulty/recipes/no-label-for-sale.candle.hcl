# Sold without any label.
recipe "no-label-for-sale" {
  title    = "No label, for sale"
  makes    = "jar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "millrace-soy" {
    weight = "1580 g"
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
    with = "tab-sticker"
  }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "172 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "138 °F"
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

  test_burn "2026-09-30" {
    formula    = "aa000vk-e6a0wc"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-01" {
    formula    = "aa000vk-e6a0wc"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-02" {
    formula    = "aa000vk-e6a0wc"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
