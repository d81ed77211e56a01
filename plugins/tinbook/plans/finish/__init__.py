"""What becomes of a bake: layers, filling, coats, paste, board."""
