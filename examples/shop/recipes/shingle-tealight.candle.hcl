recipe "shingle-tealight" {
  title    = "Shingle tealight, unscented"
  makes    = "tealight"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "pierhead-container" {
    weight = "460 g"
  }

  container "tealight-tin" {
    count = 36
    wick  = "cored-paper-20"
  }

  step "melt" {
    to   = "182 °F"
    over = "water bath"
  }
  step "pour" {
    at = "166 °F"
  }
  step "set wick" {
    with = "tab-sticker"
    say  = "Straight after the pour, tab to the middle."
  }
  step "cool" {
    for = "3 h"
  }
  step "attach label" {
    label = "us-tealight"
    on    = "box"
  }

  test_burn "2026-05-11" {
    formula    = "h0000a2-twnsqy"
    candle     = "A"
    cycle      = 1
    burned_for = "3 h 40 min"
    to_end     = true
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.85 in"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-05-11" {
    formula    = "h0000a2-twnsqy"
    candle     = "B"
    cycle      = 1
    burned_for = "3 h 50 min"
    to_end     = true
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.9 in"
    wall       = "135 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-05-11" {
    formula    = "h0000a2-twnsqy"
    candle     = "C"
    cycle      = 1
    burned_for = "3 h 40 min"
    to_end     = true
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.95 in"
    wall       = "138 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
