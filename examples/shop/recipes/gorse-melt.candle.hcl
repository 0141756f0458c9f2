recipe "gorse-melt" {
  title    = "Gorse blossom melts"
  makes    = "melt"
  made_for = "sale"
  pot      = "melter-8"

  wax "millrace-pillar" {
    weight = "1 lb 13 oz"
  }
  fragrance "gorse-blossom" {
    load = "5 % of wax"
  }
  dye "gorse-yellow" {
    amount = "8 drops"
  }

  container "clamshell-6" {
    count = 10
  }

  step "melt" {
    to   = "182 °F"
    over = "thermostatic melter"
  }
  step "add dye" {
    dye = "gorse-yellow"
  }
  step "add fragrance" {
    at   = "178 °F"
    stir = "2 min"
  }
  step "pour" {
    at = "162 °F"
  }
  step "cool" {
    for = "6 h"
  }
  step "cure" {
    for = "7 days"
  }
  step "attach label" {
    label = "us-melt"
    on    = "lid"
  }
}
