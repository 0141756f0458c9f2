  recipe "wrong-wax" {
  made_for = "class"
  pot      = "pitcher-4"
  wax "pierhead-container" {
    weight = "450 g"
  }
  container "tumbler-10" {
    count = 2
    wick  = "cored-cotton-44"
    fill  = "250 mL"
  }
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "184 °F"
    over = "water bath"
  }
  step "pour" { at = "172 °F" }
  step "cool" { for = "24 h" }
  step "trim wick" { to = "1/4 in" }
  step "attach label" { label = "us-jar" }
}
