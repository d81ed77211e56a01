"""Reference pages: every key of the book's files, and how each value is written, made from the models."""
