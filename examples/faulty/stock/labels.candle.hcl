label "us-base" {
  title      = "Base label, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children"]
  net_weight = "1 lb 5 oz (595 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-small" {
  title      = "Small molded candle, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick"]
  net_weight = "7.5 oz (212 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-jar" {
  title      = "Jar, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick", "burn at most four hours", "stop at the last half inch"]
  net_weight = "7 oz (198 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-two-of-three" {
  title      = "Jar, US, one caution short"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "trim the wick"]
  net_weight = "7 oz (198 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "uk-jar" {
  title      = "Plain jar, UK"
  markets    = ["UK"]
  languages  = ["en"]
  cautions   = ["general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire", "trim the wick", "burn at most four hours"]
  net_weight = "190 g (6.7 oz)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay, 01632 960001, post@larkspur-quay.example"
  lot        = "date of the pour"
}

label "eu-jar" {
  title       = "Plain jar, EU"
  markets     = ["EU"]
  languages   = ["en"]
  cautions    = ["general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire", "trim the wick", "burn at most four hours"]
  net_weight  = "190 g (6.7 oz)"
  contact     = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay, 01632 960001, post@larkspur-quay.example"
  lot         = "date of the pour"
}
