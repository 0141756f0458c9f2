# Whoever lights a bought candle has the label and nothing else.

label "two-of-three" {
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire"]
  net_weight = "7 oz (198 g)"
  contact    = "Larkspur Quay Candleworks"
  lot        = "date of the pour"
}

label "the-third" {
  markets   = ["US"]
  languages = ["en"]
  signal    = "WARNING"
  cautions  = ["keep away from children"]
  contact   = "Larkspur Quay Candleworks"
  lot       = "date of the pour"
}

recipe "without-any" {
  made_for = "sale"
  markets  = ["US"]
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { at = "138 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
  test_burn "2026-10-01" {
    formula = "a0000ek-14cxq6"
    candle  = "A"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-02" {
    formula = "a0000ek-14cxq6"
    candle  = "B"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-03" {
    formula = "a0000ek-14cxq6"
    candle  = "C"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
}

recipe "lacks-one" {
  made_for = "sale"
  markets  = ["US"]
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { at = "138 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
  test_burn "2026-10-01" {
    formula = "a0000ek-14cxq6"
    candle  = "A"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-02" {
    formula = "a0000ek-14cxq6"
    candle  = "B"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-03" {
    formula = "a0000ek-14cxq6"
    candle  = "C"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
}

recipe "two-labels-together" {
  made_for = "sale"
  markets  = ["US"]
  pot      = "pitcher-4"
  wax "millrace-soy" { weight = "790 g" }
  container "straight-jar-8" {
    count = 4
    wick  = "cored-cotton-44"
    fill  = "220 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "178 °F"
    over = "water bath"
  }
  step "pour" { at = "138 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = ["two-of-three", "the-third"] }
  test_burn "2026-10-01" {
    formula = "a0000ek-14cxq6"
    candle  = "A"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-02" {
    formula = "a0000ek-14cxq6"
    candle  = "B"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
  test_burn "2026-10-03" {
    formula = "a0000ek-14cxq6"
    candle  = "C"
    cycle   = 9
    to_end  = true
    result  = "pass"
  }
}
