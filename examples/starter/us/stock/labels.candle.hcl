# What your printed label says. The first three cautions are what ASTM F2058 asks
# of candles in the US; see the standard itself for its words and their size.
label "jar" {
  title      = "Jar"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick", "burn at most four hours", "stop at the last half inch"]
  net_weight = "7 oz (198 g)"
  contact    = "name and place of your shop"
  lot        = "date of the pour"
}
