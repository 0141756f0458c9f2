recipe "lantern-votive" {
  title    = "Lantern votive, fig and salt"
  makes    = "votive"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "quay-votive" {
    weight = "22.5 oz"
  }
  fragrance "fig-and-salt" {
    load = "4 % of wax"
  }
  additive "fade-guard" {
    load = "0.2 % of wax"
  }
  dye "madder" {
    amount = "1/2 piece"
  }

  mold "votive-small" {
    count = 12
    wick  = "cored-zinc-34"
  }

  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add dye" {
    dye = "madder"
  }
  step "add additive" {
    additive = "fade-guard"
  }
  step "add fragrance" {
    at   = "181 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "172 °F"
    leave = "1/4 in"
  }
  step "relief holes" {
    after = "1 h"
    count = 2
  }
  step "second pour" {
    after = "30 min"
    at    = "178 °F"
  }
  step "unmold" {
    after = "6 h"
  }
  step "set wick" {
    say = "Draw the pin and thread the tabbed wick up through the hole."
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "cure" {
    for = "2 days"
  }
  step "attach label" {
    label = "us-votive"
    on    = "wrap"
  }

  test_burn "2026-09-21" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.4 in"
    pool_depth = "3/8 in"
    flame      = "0.9 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-22" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "A"
    cycle      = 2
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.45 in"
    pool_depth = "3/8 in"
    flame      = "0.95 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-23" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "A"
    cycle      = 3
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "1.5 in"
    pool_depth = "3/8 in"
    flame      = "1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.35 in"
    pool_depth = "3/8 in"
    flame      = "0.95 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-22" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "B"
    cycle      = 2
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.4 in"
    pool_depth = "3/8 in"
    flame      = "1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-23" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "B"
    cycle      = 3
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "1.5 in"
    pool_depth = "3/8 in"
    flame      = "1.05 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-21" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.3 in"
    pool_depth = "3/8 in"
    flame      = "1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-22" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "C"
    cycle      = 2
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "1.35 in"
    pool_depth = "3/8 in"
    flame      = "1.05 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-23" {
    formula    = "jtaw0wy-akm3q4"
    candle     = "C"
    cycle      = 3
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "1.5 in"
    pool_depth = "3/8 in"
    flame      = "1.1 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
