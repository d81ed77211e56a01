"""What to buy for some orders: what they take, what is at home, and which packs make up the rest."""
