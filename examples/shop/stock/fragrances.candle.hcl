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

fragrance "amber-lantern" {
  title           = "Amber lantern"
  flash_point     = "205 °F"
  density         = "1.01 g/mL"
  most_in_candles = "30 % of total"
  gel_safe        = true
  water_based     = false
  sheet           = "safety data sheet, 2026-03"
  certificate     = "category 12, amendment 51"

  component "vanillin" {
    cas     = "121-33-5"
    share   = "4 %"
    hazards = ["Eye Irrit. 2 H319"]
  }

  component "benzyl salicylate" {
    cas     = "118-58-1"
    share   = "5 to 10 %"
    hazards = ["Skin Sens. 1B H317"]
  }

  component "benzyl benzoate" {
    cas     = "120-51-4"
    share   = "20 %"
    hazards = ["Acute Tox. 4 H302", "Aquatic Chronic 2 H411"]
    ate     = "oral 1700 mg/kg"
  }

  component "hexamethylindanopyran" {
    cas      = "1222-05-5"
    share    = "1.6 %"
    hazards  = ["Aquatic Acute 1 H400", "Aquatic Chronic 1 H410"]
    m_factor = 1
  }

  component "coumarin" {
    cas     = "91-64-5"
    share   = "2 %"
    hazards = ["Acute Tox. 4 H302", "Skin Sens. 1B H317"]
    ate     = "oral 293 mg/kg"
  }

  component "cinnamal" {
    cas     = "104-55-2"
    share   = "0.05 %"
    hazards = ["Acute Tox. 4 H312", "Skin Irrit. 2 H315", "Skin Sens. 1A H317", "Eye Irrit. 2 H319"]
    limit   = "0.01 %"
    ate     = "dermal 1100 mg/kg"
  }
}

fragrance "harbor-vanilla" {
  title           = "Harbor vanilla"
  flash_point     = "210 °F"
  density         = "1.04 g/mL"
  most_in_candles = "40 % of total"
  gel_safe        = true
  water_based     = false
  sheet           = "safety data sheet, 2026-01"
  certificate     = "category 12, amendment 51"

  component "vanillin" {
    cas     = "121-33-5"
    share   = "8 %"
    hazards = ["Eye Irrit. 2 H319"]
  }
}

fragrance "cedar-slip" {
  title           = "Cedar slip"
  flash_point     = "200 °F"
  density         = "0.97 g/mL"
  most_in_candles = "25 % of total"
  gel_safe        = false
  water_based     = false
  sheet           = "safety data sheet, 2026-02"
  certificate     = "category 12, amendment 51"

  component "alpha-isomethyl ionone" {
    cas     = "127-51-5"
    share   = "6 %"
    hazards = ["Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Aquatic Chronic 2 H411"]
  }

  component "linalyl acetate" {
    cas     = "115-95-7"
    share   = "4 %"
    hazards = ["Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Eye Irrit. 2 H319"]
  }
}

fragrance "gorse-blossom" {
  title           = "Gorse blossom"
  flash_point     = "195 °F"
  density         = "0.98 g/mL"
  most_in_candles = "20 % of total"
  gel_safe        = false
  water_based     = false
  sheet           = "safety data sheet, 2026-04"
  certificate     = "category 12, amendment 51"

  component "hexyl cinnamal" {
    cas      = "101-86-0"
    share    = "9 %"
    hazards  = ["Skin Sens. 1B H317", "Aquatic Acute 1 H400", "Aquatic Chronic 2 H411"]
    m_factor = 1
  }

  component "linalool" {
    cas     = "78-70-6"
    share   = "7 %"
    hazards = ["Skin Sens. 1B H317", "Skin Irrit. 2 H315", "Eye Irrit. 2 H319"]
  }
}

fragrance "fig-and-salt" {
  title           = "Fig and salt"
  flash_point     = "202 °F"
  density         = "0.99 g/mL"
  most_in_candles = "25 % of total"
  gel_safe        = false
  water_based     = false
  sheet           = "safety data sheet, 2026-04"
  certificate     = "category 12, amendment 51"

  component "hexyl cinnamal" {
    cas      = "101-86-0"
    share    = "5 %"
    hazards  = ["Skin Sens. 1B H317", "Aquatic Acute 1 H400", "Aquatic Chronic 2 H411"]
    m_factor = 1
  }

  component "alpha-isomethyl ionone" {
    cas     = "127-51-5"
    share   = "3 %"
    hazards = ["Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Aquatic Chronic 2 H411"]
  }
}

fragrance "clove-bell" {
  title           = "Clove bell"
  flash_point     = "198 °F"
  density         = "1.02 g/mL"
  most_in_candles = "15 % of total"
  gel_safe        = false
  water_based     = false
  sheet           = "safety data sheet, 2026-04"
  certificate     = "category 12, amendment 51"

  component "eugenol" {
    cas     = "97-53-0"
    share   = "6 %"
    hazards = ["Skin Sens. 1B H317", "Eye Irrit. 2 H319"]
  }

  component "cinnamal" {
    cas     = "104-55-2"
    share   = "0.5 %"
    hazards = ["Acute Tox. 4 H312", "Skin Irrit. 2 H315", "Skin Sens. 1A H317", "Eye Irrit. 2 H319"]
    limit   = "0.01 %"
    ate     = "dermal 1100 mg/kg"
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
