recipe "tide-pillar" {
  title    = "Tide and thyme pillar"
  makes    = "pillar"
  made_for = "sale"
  markets  = ["US"]
  pot      = "pitcher-4"

  wax "northlight-pillar" {
    weight = "1.24 kg"
  }
  fragrance "tide-and-thyme" {
    load = "5 % of wax"
  }
  dye "madder" {
    weight = "0.6 g"
  }

  mold "pillar-3x6" {
    count = 2
    wick  = "flat-braid-24"
  }

  step "seal wick hole" {
    with = "rubber-plug"
  }
  step "warm mold" {
    to = "110 °F"
  }
  step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add dye" {
    dye = "madder"
  }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
    say   = "Keep a quarter of the batch warm for the second pour."
  }
  step "relief holes" {
    after = "2 h"
    count = 4
    depth = "4 in"
    again = "40 min"
  }
  step "second pour" {
    after = "1 h 15 min"
    at    = "182 °F"
    say   = "Stop just below the line the first pour left."
  }
  step "unmold" {
    after = "14 h"
  }
  step "trim base" {}
  step "cure" {
    for = "3 days"
  }
  step "trim wick" {
    to = "1/4 in"
  }
  step "attach label" {
    label = "us-base"
    on    = "base"
  }

  test_burn "2026-09-07" {
    formula    = "4g0w0vn-3e195k"
    candle     = "A"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.6 in"
    pool_depth = "3/8 in"
    flame      = "1.15 in"
    soot       = "none"
    seen       = []
    result     = "pass"
    burned_as = [
      "wax northlight-pillar: 100 % of wax",
      "fragrance tide-and-thyme: 5 % of wax",
      "dye madder: 0.05 % of wax",
      "mold pillar-3x6: cylinder, 76 mm across, 152 mm high",
      "wick flat-braid-24: 1 to a candle, for 70 to 83 mm",
    ]
  }

  test_burn "2026-09-28" {
    formula    = "4g0w0vn-3e195k"
    candle     = "A"
    cycle      = 22
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.25 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-07" {
    formula    = "4g0w0vn-3e195k"
    candle     = "B"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.55 in"
    pool_depth = "3/8 in"
    flame      = "1.2 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-28" {
    formula    = "4g0w0vn-3e195k"
    candle     = "B"
    cycle      = 22
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.3 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-07" {
    formula    = "4g0w0vn-3e195k"
    candle     = "C"
    cycle      = 1
    burned_for = "4 h"
    to_end     = false
    melt_pool  = "2.5 in"
    pool_depth = "3/8 in"
    flame      = "1.25 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-09-28" {
    formula    = "4g0w0vn-3e195k"
    candle     = "C"
    cycle      = 22
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "2.7 in"
    pool_depth = "3/8 in"
    flame      = "1.35 in"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
