"""What follows from the book: models and facts in, rows out."""
