recipe "harbor-jar" {
  title    = "Harbor light, amber lantern"
  makes    = "jar"
  made_for = "sale"
  markets  = ["US"]
  pot      = "pitcher-4"

  wax "pierhead-container" {
    weight = "2 lb 13 oz"
  }
  fragrance "amber-lantern" {
    load = "7 % of wax"
  }
  dye "pewter" {
    amount = "1 piece"
  }

  container "tumbler-10" {
    count = 6
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "warm container" {
    to = "110 °F"
  }
  step "melt" {
    to   = "185 °F"
    over = "water bath"
  }
  step "add dye" {
    dye = "pewter"
  }
  step "add fragrance" {
    at   = "181 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "166 °F"
    leave = "1 1/8 in"
  }
  step "second pour" {
    after = "3 h"
    at    = "170 °F"
    say   = "A thin one, for a level top."
  }
  step "cool" {
    for = "20 h"
  }
  step "cure" {
    for = "3 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-jar"
    on    = "base"
  }

  test_burn "2026-09-14" {
    formula    = "h9020gk-z45kd8"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.5 in"
    pool_depth = "3/8 in"
    flame      = "1.05 in"
    wall       = "123 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-22" {
    formula    = "h9020gk-z45kd8"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "7/16 in"
    flame      = "1.25 in"
    wall       = "131 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-14" {
    formula    = "h9020gk-z45kd8"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.45 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    wall       = "126 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-22" {
    formula    = "h9020gk-z45kd8"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "7/16 in"
    flame      = "1.3 in"
    wall       = "134 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-14" {
    formula    = "h9020gk-z45kd8"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.4 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    wall       = "129 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-22" {
    formula    = "h9020gk-z45kd8"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.8 in"
    pool_depth = "7/16 in"
    flame      = "1.35 in"
    wall       = "137 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
