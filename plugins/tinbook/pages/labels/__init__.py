"""Labels and cards as they are printed, and the pages of ingredients and allergens."""
