# THIS OIL IS INVENTED. What its components are, how much of each, and what they
# are classified as stands in the safety data sheet of your own.
fragrance "first-scent" {
  title           = "First scent"
  flash_point     = "205 °F"
  density         = "0.98 g/mL"
  most_in_candles = "25 % of total" # the certificate for candles says it
  gel_safe        = false
  water_based     = false
  sheet           = "invented; name the safety data sheet and its date"
  certificate     = "invented; name the category and the amendment"

  component "linalool" {
    cas     = "78-70-6"
    share   = "6 %"
    hazards = ["Skin Irrit. 2 H315", "Skin Sens. 1B H317", "Eye Irrit. 2 H319"]
  }
}
