# United States.

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

label "us-pillar" {
  title      = "Small pillar, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick"]
  net_weight = "13 oz (368 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-slim" {
  title      = "Slim pillar, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick"]
  net_weight = "10 oz (283 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-block" {
  title      = "Square block, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick"]
  net_weight = "1 lb 7 oz (652 g)"
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

label "us-tin" {
  title      = "Tin, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick", "burn at most four hours", "stop at the last half inch"]
  net_weight = "5.5 oz (155 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-bowl" {
  title      = "Bowl of three wicks, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick", "burn at most four hours", "stop at the last half inch", "do not move when lit"]
  net_weight = "1 lb 4 oz (566 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-votive" {
  title      = "Votive, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children", "trim the wick", "burn at most four hours"]
  net_weight = "1.8 oz (51 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-tealight" {
  title      = "Tealight, US"
  markets    = ["US"]
  languages  = ["en"]
  signal     = "WARNING"
  cautions   = ["burn within sight", "keep away from things that catch fire", "keep away from children"]
  net_weight = "0.4 oz (11 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

label "us-taper" {
  title            = "Pair of tapers, US"
  markets          = ["US"]
  languages        = ["en"]
  signal           = "WARNING"
  cautions         = ["burn within sight", "keep away from things that catch fire", "keep away from children", "burn upright"]
  count_and_length = "2 candles, 10 in (254 mm)"
  contact          = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot              = "date of the pour"
}

label "us-melt" {
  title      = "Melts, US"
  markets    = ["US"]
  languages  = ["en"]
  cautions   = ["keep away from children"]
  net_weight = "2.5 oz (70 g)"
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay"
  lot        = "date of the pour"
}

# European Union and United Kingdom.

label "eu-kelp-jar" {
  title       = "Kelp and lime jar, EU"
  markets     = ["EU"]
  languages   = ["en"]
  signal      = "Warning"
  cautions    = ["general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire", "trim the wick", "burn at most four hours"]
  net_weight  = "190 g (6.7 oz)"
  pictograms  = ["GHS07"]
  hazards     = ["H317"]
  names       = ["d-limonene", "linalool", "citral"]
  precautions = ["P101", "P102", "P280", "P302+P352", "P333+P313", "P501"]
  ufi         = "UFI: K7C0-40W5-T00A-93GX"
  contact     = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay, 01632 960001, post@larkspur-quay.example"
  lot         = "date of the pour"
}

label "uk-amber-jar" {
  title      = "Amber lantern jar, UK"
  markets    = ["UK"]
  languages  = ["en"]
  cautions   = ["general warning sign", "never leave unattended", "keep away from children and pets", "keep away from things that catch fire", "trim the wick", "burn at most four hours"]
  net_weight = "190 g (6.7 oz)"
  hazards    = ["EUH208"]
  names      = ["benzyl salicylate", "coumarin", "cinnamal"]
  contact    = "Larkspur Quay Candleworks, 4 Slip Street, Larkspur Quay, 01632 960001, post@larkspur-quay.example"
  lot        = "date of the pour"
}
