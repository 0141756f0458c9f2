# Larkspur Quay Candleworks is an invented workshop. Its waxes, oils and wicks are
# invented too: use the figures of your own suppliers' sheets, never these.
shop "larkspur-quay" {
  title     = "Larkspur Quay Candleworks"
  units     = "us"
  markets   = ["US"]
  room      = "70 °F"
  languages = ["en"]

  # The workshops on the quay keep this rule in the same words. We use a ball of
  # putty up to six times, so we keep more in hand than the rule says.
  tune "fresh-putty-for-hot-pours" {
    reason = "A ball of putty does six pours here, and wept at the seventh: see the trial putty-reuse."

    option "in_hand" {
      is = "15 °F"
    }
  }
}
