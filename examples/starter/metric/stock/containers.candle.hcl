# Measure what you pour into: the width inside decides the wick, and what it
# holds, filled with water up to the line, decides how much wax it takes.
container "straight-jar" {
  title            = "Straight-sided jar"
  kind             = "jar"
  diameter         = "70 mm"
  opening          = "70 mm"
  height           = "82 mm"
  holds            = "240 mL"
  material         = "glass"
  made_for_candles = true # its maker says so; a drinking glass is not
  thermal_shock    = "50 °C"
  finish           = "plain"
}
