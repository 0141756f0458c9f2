# This file makes the folder, and all below it, one shop.
shop "my-shop" {
  title     = "My candle shop"
  units     = "metric" # us or metric: what comes first on batch sheets
  markets   = ["EU"]   # where your candles are sold: US, EU, UK
  room      = "21 °C"
  languages = ["en"]
}
