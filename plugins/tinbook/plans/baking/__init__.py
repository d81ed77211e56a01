"""The oven: how long, how hot, how many at once."""
