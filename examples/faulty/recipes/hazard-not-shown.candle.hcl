# A scented candle sold in the UK, with a label that shows none of its hazards: d-limonene is over 1 % of it.
recipe "hazard-not-shown" {
  title    = "Hazard not shown"
  makes    = "jar"
  made_for = "sale"
  markets  = ["UK"]
  pot      = "pitcher-4"

  wax "headland-rapeseed" {
    weight = "1160 g"
  }
  fragrance "kelp-and-lime" {
    load = "6 % of wax"
  }

  container "jar-200" {
    count = 6
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "melt" {
    to   = "78 °C"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "74 °C"
    stir = "2 min"
  }
  step "pour" {
    at = "58 °C"
  }
  step "cool" {
    for = "24 h"
  }
  step "cure" {
    for = "14 days"
  }
  step "trim wick" {
    to = "6 mm"
  }
  step "attach label" {
    label = "uk-jar"
    on    = "base"
  }

  test_burn "2026-09-30" {
    formula    = "220003k-29kfpv"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "66 mm"
    pool_depth = "9 mm"
    flame      = "27 mm"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-01" {
    formula    = "220003k-29kfpv"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "66 mm"
    pool_depth = "9 mm"
    flame      = "27 mm"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-02" {
    formula    = "220003k-29kfpv"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "66 mm"
    pool_depth = "9 mm"
    flame      = "27 mm"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
