recipe "firth-uk" {
  title    = "Firth, amber lantern"
  makes    = "jar"
  made_for = "sale"
  markets  = ["UK"]
  pot      = "melter-8"

  wax "lagoon-coconut" {
    weight = "1140 g"
  }
  fragrance "amber-lantern" {
    load = "7 % of wax"
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
    at   = "73 °C"
    stir = "2 min"
  }
  step "pour" {
    at = "60 °C"
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
    label = "uk-amber-jar"
    on    = "side"
  }

  test_burn "2026-10-08" {
    formula    = "h90003k-9ty6ay"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "59 mm"
    pool_depth = "8 mm"
    flame      = "25 mm"
    wall       = "47 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-15" {
    formula    = "h90003k-9ty6ay"
    candle     = "A"
    cycle      = 8
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "68 mm"
    pool_depth = "10 mm"
    flame      = "29 mm"
    wall       = "52 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-08" {
    formula    = "h90003k-9ty6ay"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "58 mm"
    pool_depth = "8 mm"
    flame      = "26 mm"
    wall       = "49 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-15" {
    formula    = "h90003k-9ty6ay"
    candle     = "B"
    cycle      = 8
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "68 mm"
    pool_depth = "10 mm"
    flame      = "30 mm"
    wall       = "54 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-08" {
    formula    = "h90003k-9ty6ay"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "57 mm"
    pool_depth = "8 mm"
    flame      = "27 mm"
    wall       = "51 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-15" {
    formula    = "h90003k-9ty6ay"
    candle     = "C"
    cycle      = 8
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "68 mm"
    pool_depth = "10 mm"
    flame      = "31 mm"
    wall       = "56 °C"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
