"""Orders: what each takes, what it must be free from, and a week in which everything is ready in time."""
