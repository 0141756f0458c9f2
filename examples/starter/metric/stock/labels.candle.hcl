# What your printed label says. The first four cautions are what EN 15494 asks of
# candles; see the standard itself for its signs and words. What is sold needs the
# hazards of its scent on the label too: a recipe for sale is checked for them.
label "jar" {
  title      = "Jar"
  markets    = ["EU"]
  languages  = ["en"]
  cautions   = ["general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire", "trim the wick", "burn at most four hours"]
  net_weight = "198 g"
  contact    = "name, address and telephone number of your shop"
  lot        = "date of the pour"
}
