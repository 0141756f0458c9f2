recipe "quayside-taper" {
  title    = "Quayside dipped tapers"
  makes    = "taper"
  made_for = "sale"
  pot      = "dipping-can"

  wax "ropewalk-dipping" {
    weight = "6 lb 8 oz"
  }
  additive "stearin" {
    load = "6 % of wax"
  }

  taper "taper-10" {
    count = 12
    wick  = "flat-braid-15"
  }

  step "melt" {
    to   = "170 °F"
    over = "water bath"
  }
  step "add additive" {
    additive = "stearin"
  }
  step "prime wick" {
    say = "Hold the wick under until the bubbles stop, then pull it straight."
  }
  step "dip" {
    at    = "160 °F"
    times = 26
    wait  = "3 min"
  }
  step "overdip" {
    at = "164 °F"
  }
  step "cool" {
    for = "12 h"
  }
  step "trim base" {}
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-taper"
    on    = "band"
  }

  test_burn "2026-08-17" {
    formula    = "70700kh-e19wgx"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "0.8 in"
    pool_depth = "1/16 in"
    flame      = "1.35 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-18" {
    formula    = "70700kh-e19wgx"
    candle     = "A"
    cycle      = 2
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "0.8 in"
    pool_depth = "1/16 in"
    flame      = "1.4 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-19" {
    formula    = "70700kh-e19wgx"
    candle     = "A"
    cycle      = 3
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "0.8 in"
    pool_depth = "1/16 in"
    flame      = "1.45 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-17" {
    formula    = "70700kh-e19wgx"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "0.75 in"
    pool_depth = "1/16 in"
    flame      = "1.4 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-18" {
    formula    = "70700kh-e19wgx"
    candle     = "B"
    cycle      = 2
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "0.75 in"
    pool_depth = "1/16 in"
    flame      = "1.45 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-19" {
    formula    = "70700kh-e19wgx"
    candle     = "B"
    cycle      = 3
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "0.8 in"
    pool_depth = "1/16 in"
    flame      = "1.5 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-17" {
    formula    = "70700kh-e19wgx"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "0.7 in"
    pool_depth = "1/16 in"
    flame      = "1.45 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-18" {
    formula    = "70700kh-e19wgx"
    candle     = "C"
    cycle      = 2
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "0.7 in"
    pool_depth = "1/16 in"
    flame      = "1.5 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-08-19" {
    formula    = "70700kh-e19wgx"
    candle     = "C"
    cycle      = 3
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "0.8 in"
    pool_depth = "1/16 in"
    flame      = "1.55 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
