pot "pitcher-4" {
  title = "Pouring pitcher in a water bath"
  holds = "4 qt"
  heat  = "water bath"
}
