fragrance "sharp-lime" {
  title           = "Sharp lime"
  flash_point     = "178 °F"
  density         = "0.93 g/mL"
  most_in_candles = "20 % of total"
  gel_safe        = false
  water_based     = false

  component "citral" {
    cas     = "5392-40-5"
    share   = "19.99 %"
    hazards = ["Skin Sens. 1 H317"]
#             ^^^^^^^^^^^^^^^^^^^^^ component-understated consider
  }

  component "soft stuff" {
    share   = "2 %"
    hazards = ["may irritate"]
#              ^^^^^^^^^^^^^^ hazard-unknown must
  }
}

label "short" {
  markets     = ["EU"]
  cautions    = ["general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire"]
  hazards     = ["EUH208"]
  contact     = "Larkspur Quay Candleworks, post@larkspur-quay.example"
  lot         = "date of the pour"
}

  recipe "sharp-eu" {
# ^^^^^^^^^^^^^^^^^ test-burn-missing must
    makes    = "jar"
    made_for = "sale"
    markets  = ["EU"]
    pot      = "melter-8"
    wax "headland-rapeseed" {
      weight = "1160 g"
    }
    fragrance "sharp-lime" {
      load = "5 % of total"
    }
    container "jar-200" {
      count = 6
      wick  = "cored-cotton-44"
      fill  = "220 mL"
    }
    step "set wick" { with = "tab-sticker" }
    step "melt" {
      to   = "78 °C"
      over = "thermostatic melter"
    }
    step "add fragrance" {
      at   = "74 °C"
      stir = "2 min"
    }
    step "pour" { at = "58 °C" }
    step "cool" { for = "24 h" }
    step "cure" { for = "14 days" }
    step "trim wick" { to = "6 mm" }
    step "attach label" { label = "short" }
#                                 ^^^^^^^ hazard-label-missing must
  }
