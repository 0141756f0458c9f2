# A remark.
recipe "one-two" { // another
  title = "Rain, \"on\" slate — 2 of them"
  /* over
     two lines */
  wax "soy" {
    weight = "2 lb 8 oz"
  }
  step "pour" { at = "168 to 182 °F" }
  fragrance "x" { load = "8 % of wax" }
  markets = ["US", "EU"]
  count = 4
  ok = true
}

rule "warm" {
  require = pour.at <= mold.seal.holds_to - degrees("10 °F") && !includes(wax.families, "gel")
  when    = wax.weight > option.in_hand ? count("step") == 2 : false
  message = "The pour is ${show(pour.at)}, $${not} this."
  because = <<-EOT
    It says "so" = { here }.
  EOT
  level = "should"
}
