label "bare-sticker" {
  markets  = ["US"]
  cautions = ["burn within sight"]
}

  recipe "badly-labelled" {
    made_for = "class"
    pot      = "pitcher-4"
    wax "pierhead-container" {
      weight = "440 g"
    }
    container "tumbler-10" {
      count = 2
      wick  = "cored-cotton-44"
      fill  = "240 mL"
    }
    step "set wick" { with = "tab-sticker" }
    step "warm container" { to = "110 °F" }
    step "melt" {
      to   = "184 °F"
      over = "water bath"
    }
    step "pour" { at = "166 °F" }
    step "cool" { for = "24 h" }
    step "trim wick" { to = "1/4 in" }
    step "attach label" { label = "us-small" }
  }
