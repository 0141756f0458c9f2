# What stands on the shelf, once each, with the figures of the supplier's sheet.
# THIS WAX IS INVENTED. Put your supplier's figures in its place before you melt
# anything: the limits that recipes are checked against are these.
wax "container-soy" {
  title            = "Container soy"
  family           = "soy"
  suits            = ["container", "tealight"]
  melt_to          = "170 to 182 °F"
  add_fragrance_at = "165 to 180 °F"
  pour_at          = "130 to 145 °F"
  never_above      = "185 °F"
  flash_point      = "440 °F"
  fragrance_limit  = "10 % of wax" # of wax, or of total? Suppliers use both: say which
  density          = "0.91 g/mL"
  shrinkage        = "6 %"
  congeals_at      = "114 °F"
  cure             = "7 to 14 days"
  source           = "invented; name your supplier's sheet and its date"
}
