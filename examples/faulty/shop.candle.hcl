# A shop for practice: every recipe in it is wrong on purpose, and says how at
# its top. Pour none of them.
shop "larkspur-quay-lessons" {
  title     = "Larkspur Quay Candleworks, recipes to find fault with"
  units     = "us"
  markets   = ["US"]
  room      = "70 °F"
  languages = ["en"]
}
