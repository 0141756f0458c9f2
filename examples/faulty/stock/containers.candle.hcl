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
