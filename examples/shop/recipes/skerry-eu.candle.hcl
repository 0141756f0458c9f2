recipe "skerry-eu" {
  title    = "Skerry, kelp and lime"
  makes    = "jar"
  made_for = "sale"
  markets  = ["EU"]
  pot      = "melter-8"

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
    over = "thermostatic melter"
  }
  step "add fragrance" {
    at   = "74 °C"
    stir = "2 min"
  }
  step "pour" {
    at = "58 °C"
  }
  step "cool" {
    for  = "24 h"
    room = "20 °C"
  }
  step "cure" {
    for = "14 days"
  }
  step "trim wick" {
    to = "6 mm"
  }
  step "attach label" {
    label = "eu-kelp-jar"
    on    = "side"
  }

  test_burn "2026-10-05" {
    formula    = "220003k-29kfpv"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "58 mm"
    pool_depth = "8 mm"
    flame      = "24 mm"
    wall       = "46 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-12" {
    formula    = "220003k-29kfpv"
    candle     = "A"
    cycle      = 8
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "68 mm"
    pool_depth = "10 mm"
    flame      = "28 mm"
    wall       = "51 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-05" {
    formula    = "220003k-29kfpv"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "57 mm"
    pool_depth = "8 mm"
    flame      = "25 mm"
    wall       = "48 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-12" {
    formula    = "220003k-29kfpv"
    candle     = "B"
    cycle      = 8
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "68 mm"
    pool_depth = "10 mm"
    flame      = "29 mm"
    wall       = "53 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-05" {
    formula    = "220003k-29kfpv"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "56 mm"
    pool_depth = "8 mm"
    flame      = "26 mm"
    wall       = "50 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-12" {
    formula    = "220003k-29kfpv"
    candle     = "C"
    cycle      = 8
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "68 mm"
    pool_depth = "10 mm"
    flame      = "30 mm"
    wall       = "55 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
