"""From a baked cake to a finished one: layers, filling, coats, paste, board."""
