"""Labels: lists of ingredients, allergens, the rules they follow, dates, and what a pack went into."""
