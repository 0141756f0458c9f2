# No pot is filled above three quarters with molten wax.
pot "pitcher" {
  title = "Pouring pitcher in a water bath"
  holds = "2 L"
  heat  = "water bath"
}
