"""What things cost and what to ask: prices paid, the cost of a mixture, a cake or an order, and the price from it."""
