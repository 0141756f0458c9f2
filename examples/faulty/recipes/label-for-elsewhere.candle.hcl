# Sold in the EU, with the label made for the UK.
recipe "label-for-elsewhere" {
  title    = "Label for elsewhere"
  makes    = "jar"
  made_for = "sale"
  markets  = ["EU"]
  pot      = "pitcher-4"

  wax "headland-rapeseed" {
    weight = "1230 g"
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
    over = "water bath"
  }
  step "pour" {
    at = "58 °C"
  }
  step "cool" {
    for = "24 h"
  }
  step "trim wick" {
    to = "6 mm"
  }
  step "attach label" {
    label = "uk-jar"
    on    = "base"
  }

  test_burn "2026-09-30" {
    formula    = "200003k-6ht2bq"
    candle     = "A"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "66 mm"
    pool_depth = "9 mm"
    flame      = "27 mm"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-01" {
    formula    = "200003k-6ht2bq"
    candle     = "B"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "66 mm"
    pool_depth = "9 mm"
    flame      = "27 mm"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }

  test_burn "2026-10-02" {
    formula    = "200003k-6ht2bq"
    candle     = "C"
    cycle      = 9
    burned_for = "3 h 30 min"
    to_end     = true
    melt_pool  = "66 mm"
    pool_depth = "9 mm"
    flame      = "27 mm"
    wall       = "132 °F"
    soot       = "none"
    seen       = []
    result     = "pass"
  }
}
