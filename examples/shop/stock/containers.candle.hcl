container "tumbler-10" {
  title            = "Clear tumbler, 10 oz"
  kind             = "jar"
  diameter         = "2.9 in"
  opening          = "2.9 in"
  height           = "3 1/2 in"
  holds            = "300 mL"
  material         = "glass"
  made_for_candles = true
  thermal_shock    = "90 °F"
  finish           = "plain"
}

container "straight-jar-8" {
  title            = "Straight-sided jar, 8 oz"
  kind             = "jar"
  diameter         = "2 3/4 in"
  opening          = "2 3/4 in"
  height           = "3 1/4 in"
  holds            = "240 mL"
  material         = "glass"
  made_for_candles = true
  thermal_shock    = "90 °F"
  finish           = "plain"
}

container "jar-200" {
  title            = "Plain jar, 200 mL"
  kind             = "jar"
  diameter         = "70 mm"
  opening          = "70 mm"
  height           = "80 mm"
  holds            = "230 mL"
  material         = "glass"
  made_for_candles = true
  thermal_shock    = "50 °C"
  finish           = "plain"
}

container "tin-8" {
  title            = "Seamless tin, 8 oz"
  kind             = "tin"
  diameter         = "3 in"
  opening          = "3 in"
  height           = "2 in"
  holds            = "190 mL"
  material         = "tin"
  made_for_candles = true
  thermal_shock    = "150 °F"
  finish           = "plain"
}

container "bell-bowl" {
  title            = "Wide stoneware bowl"
  kind             = "bowl"
  diameter         = "5 in"
  opening          = "5 in"
  height           = "3 in"
  holds            = "720 mL"
  material         = "ceramic"
  made_for_candles = true
  thermal_shock    = "90 °F"
  finish           = "glazed"
}

container "votive-glass" {
  title            = "Votive glass"
  kind             = "votive glass"
  diameter         = "2 in"
  opening          = "2 in"
  height           = "2 1/2 in"
  holds            = "95 mL"
  material         = "glass"
  made_for_candles = true
  thermal_shock    = "90 °F"
  finish           = "plain"
}

container "tealight-cup" {
  title            = "Tealight cup, clear"
  kind             = "tealight cup"
  diameter         = "1 1/2 in"
  opening          = "1 1/2 in"
  height           = "5/8 in"
  holds            = "14 mL"
  material         = "polycarbonate"
  made_for_candles = true
  thermal_shock    = "150 °F"
  finish           = "plain"
  softens_at       = "265 °F"
}

container "tealight-tin" {
  title            = "Tealight cup, aluminum"
  kind             = "tealight cup"
  diameter         = "1 1/2 in"
  opening          = "1 1/2 in"
  height           = "5/8 in"
  holds            = "14 mL"
  material         = "aluminum"
  made_for_candles = true
  thermal_shock    = "150 °F"
  finish           = "plain"
}

container "clamshell-6" {
  title            = "Clamshell of six cubes"
  kind             = "clamshell"
  diameter         = "3.1 in"
  opening          = "3.1 in"
  height           = "1 in"
  holds            = "90 mL"
  material         = "other plastic"
  made_for_candles = true
  thermal_shock    = "110 °F"
  finish           = "plain"
  softens_at       = "215 °F"
}
