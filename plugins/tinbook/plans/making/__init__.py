"""How a whole cake is held up, what it weighs, how it travels, and how far ahead its parts can be made."""
