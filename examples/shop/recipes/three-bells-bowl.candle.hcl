# Three wicks share this bowl, so each is chosen for 5 in / √3 = 2.9 in.
recipe "three-bells-bowl" {
  title    = "Three bells bowl, cedar slip"
  makes    = "jar"
  made_for = "sale"
  pot      = "pitcher-4"

  wax "lagoon-coconut" {
    weight = "2 lb 10 oz"
  }
  fragrance "cedar-slip" {
    load = "1 oz per lb"
  }
  dye "sea-glass" {
    amount = "1 piece"
  }

  container "bell-bowl" {
    count        = 2
    wick         = "cored-paper-36"
    wicks        = 3
    wick_spacing = "2 1/8 in"
    from_wall    = "1 1/4 in"
    fill         = "680 mL"
  }

  step "set wick" {
    with = "tab-sticker"
    say  = "On a circle half way from the middle to the wall."
  }
  step "melt" {
    to   = "172 °F"
    over = "water bath"
  }
  step "add dye" {
    dye = "sea-glass"
  }
  step "add fragrance" {
    at   = "165 °F"
    stir = "3 min"
  }
  step "pour" {
    at = "142 °F"
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
  step "attach label" {
    label = "us-bowl"
    on    = "base"
  }
}

test_burn "2026-09-07" {
  recipe     = "three-bells-bowl"
  formula    = "hk0b0mf-2fhmef"
  candle     = "A"
  cycle      = 1
  burned_for = "4 h"
  to_end     = false
  melt_pool  = "4.5 in"
  pool_depth = "5/16 in"
  flame      = "0.95 in"
  wall       = "119 °F"
  soot       = "none"
  seen       = []
  result     = "pass"
}

test_burn "2026-09-15" {
  recipe     = "three-bells-bowl"
  formula    = "hk0b0mf-2fhmef"
  candle     = "A"
  cycle      = 9
  burned_for = "3 h 30 min"
  to_end     = true
  melt_pool  = "5 in"
  pool_depth = "3/8 in"
  flame      = "1.15 in"
  wall       = "127 °F"
  soot       = "none"
  seen       = []
  result     = "pass"
}

test_burn "2026-09-07" {
  recipe     = "three-bells-bowl"
  formula    = "hk0b0mf-2fhmef"
  candle     = "B"
  cycle      = 1
  burned_for = "4 h"
  to_end     = false
  melt_pool  = "4.45 in"
  pool_depth = "5/16 in"
  flame      = "1 in"
  wall       = "122 °F"
  soot       = "none"
  seen       = []
  result     = "pass"
}

test_burn "2026-09-15" {
  recipe     = "three-bells-bowl"
  formula    = "hk0b0mf-2fhmef"
  candle     = "B"
  cycle      = 9
  burned_for = "3 h 30 min"
  to_end     = true
  melt_pool  = "5 in"
  pool_depth = "3/8 in"
  flame      = "1.2 in"
  wall       = "130 °F"
  soot       = "none"
  seen       = []
  result     = "pass"
}

test_burn "2026-09-07" {
  recipe     = "three-bells-bowl"
  formula    = "hk0b0mf-2fhmef"
  candle     = "C"
  cycle      = 1
  burned_for = "4 h"
  to_end     = false
  melt_pool  = "4.4 in"
  pool_depth = "5/16 in"
  flame      = "1.05 in"
  wall       = "125 °F"
  soot       = "none"
  seen       = []
  result     = "pass"
}

test_burn "2026-09-15" {
  recipe     = "three-bells-bowl"
  formula    = "hk0b0mf-2fhmef"
  candle     = "C"
  cycle      = 9
  burned_for = "3 h 30 min"
  to_end     = true
  melt_pool  = "5 in"
  pool_depth = "3/8 in"
  flame      = "1.25 in"
  wall       = "133 °F"
  soot       = "none"
  seen       = []
  result     = "pass"
}
