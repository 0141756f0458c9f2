# This file makes the folder, and all below it, one shop.
shop "my-shop" {
  title     = "My candle shop"
  units     = "us"   # us or metric: what comes first on batch sheets
  markets   = ["US"] # where your candles are sold: US, EU, UK
  room      = "70 °F"
  languages = ["en"]
}
