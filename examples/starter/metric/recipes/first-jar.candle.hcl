# A recipe names what it takes from the shelf by its key, says how much, and goes
# through the work step by step. Amounts carry their unit, as on paper.
recipe "first-jar" {
  title    = "First jar"
  makes    = "jar"
  made_for = "own use" # "sale" or "class" once it is: then labels and three test burns are asked for
  pot      = "pitcher"

  wax "container-soy" {
    weight = "820 g" # for the whole batch
  }
  fragrance "first-scent" {
    load = "6 % of wax" # of wax or of total, never a bare %
  }
  container "straight-jar" {
    count = 4
    wick  = "cored-cotton"
    fill  = "230 mL" # of each, so that some glass stays free above
  }

  # Wax burns. Melt over water or in a melter with a thermostat, a thermometer in
  # the wax, a lid within reach, and stay there. Never put water on burning wax.
  step "set wick" { with = "tab-sticker" }
  step "melt" {
    to   = "80 °C"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "78 °C"
    stir = "2 min"
  }
  step "pour" { at = "59 °C" }
  step "cool" { for = "24 h" }
  step "cure" { for = "10 days" }
  step "trim wick" { to = "6 mm" }
  step "attach label" {
    label = "jar"
    on    = "base"
  }
}

# Try it: change 6 % to 12 %, or the 59 °C of the pour to 88 °C, and run
# wickrule check again.
