# What stands on the shelf, once each, with the figures of the supplier's sheet.
# THIS WAX IS INVENTED. Put your supplier's figures in its place before you melt
# anything: the limits that recipes are checked against are these.
wax "container-soy" {
  title            = "Container soy"
  family           = "soy"
  suits            = ["container", "tealight"]
  melt_to          = "77 to 83 °C"
  add_fragrance_at = "74 to 82 °C"
  pour_at          = "54 to 63 °C"
  never_above      = "85 °C"
  flash_point      = "227 °C"
  fragrance_limit  = "10 % of wax" # of wax, or of total? Suppliers use both: say which
  density          = "0.91 g/mL"
  shrinkage        = "6 %"
  congeals_at      = "45 °C"
  cure             = "7 to 14 days"
  source           = "invented; name your supplier's sheet and its date"
}
