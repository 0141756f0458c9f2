# Larkspur Quay Candleworks is an invented workshop. Its waxes, oils and wicks are
# invented too: use the figures of your own suppliers' sheets, never these.
shop "larkspur-quay" {
  title     = "Larkspur Quay Candleworks"
  units     = "us"
  markets   = ["US"]
  room      = "70 °F"
  languages = ["en"]
}
