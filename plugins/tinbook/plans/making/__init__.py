"""How a whole cake is held up, what it weighs, how it goes out, and how long ahead its parts are made."""
