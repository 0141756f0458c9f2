# Pillar wax in a jar that is sold. It shrinks, leaves the glass and can crack.
# The stock has a wax that suits.
recipe "pillar-wax-for-sale" {
  title    = "Pillar wax in a tumbler, for sale"
  makes    = "jar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "450 g"
  }
  fragrance "tide-and-thyme" {
    load = "4 % of wax"
  }
  container "tumbler-10" {
    count = 2
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }

  step "set wick" {
    with = "tab-sticker"
  }
  step "warm container" {
    to = "120 °F"
  }
  step "melt" {
    to   = "184 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "181 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "172 °F"
  }
  step "cool" {
    for = "24 h"
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

  test_burn "2026-09-30" {
    formula    = "44000gk-b8wh0h"
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
    formula    = "44000gk-b8wh0h"
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
    formula    = "44000gk-b8wh0h"
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
