pot "pitcher-4" {
  title = "Pouring pitcher in a water bath"
  holds = "4 qt"
  heat  = "water bath"
}

pot "melter-8" {
  title = "Thermostatic melter"
  holds = "8 qt"
  heat  = "thermostatic melter"
}

pot "dipping-can" {
  title = "Tall dipping can in a water bath"
  holds = "6 qt"
  heat  = "water bath"
}
