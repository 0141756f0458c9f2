fragrance "tide-and-thyme" {
  title           = "Tide and thyme"
  flash_point     = "190 °F"
  density         = "0.96 g/mL"
  most_in_candles = "25 % of total"
  gel_safe        = false
  water_based     = false
  sheet           = "safety data sheet, 2026-02"
  certificate     = "category 12, amendment 51"

  component "linalool" {
    cas     = "78-70-6"
    share   = "12 %"
    hazards = ["Skin Sens. 1B H317", "Skin Irrit. 2 H315", "Eye Irrit. 2 H319"]
  }
}

fragrance "kelp-and-lime" {
  title           = "Kelp and lime"
  flash_point     = "178 °F"
  density         = "0.93 g/mL"
  most_in_candles = "20 % of total"
  gel_safe        = false
  water_based     = false
  sheet           = "safety data sheet, 2026-03"
  certificate     = "category 12, amendment 51"

  component "d-limonene" {
    cas      = "5989-27-5"
    share    = "20 %"
    hazards  = ["Flam. Liq. 3 H226", "Asp. Tox. 1 H304", "Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Aquatic Acute 1 H400", "Aquatic Chronic 3 H412"]
    m_factor = 1
  }

  component "linalool" {
    cas     = "78-70-6"
    share   = "8 %"
    hazards = ["Skin Sens. 1B H317", "Skin Irrit. 2 H315", "Eye Irrit. 2 H319"]
  }

  component "citral" {
    cas     = "5392-40-5"
    share   = "2 %"
    hazards = ["Skin Irrit. 2 H315", "Skin Sens. 1 H317", "Eye Irrit. 2 H319"]
  }
}

fragrance "rain-on-slate" {
  title           = "Rain on slate"
  flash_point     = "208 °F"
  density         = "0.99 g/mL"
  most_in_candles = "50 % of total"
  gel_safe        = true
  water_based     = false
  components      = "none classified"
  sheet           = "safety data sheet, 2026-05"
  certificate     = "category 12, amendment 51"
}
