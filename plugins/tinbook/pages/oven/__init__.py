"""The oven's pages: its dial, other ways to bake each mixture, what a bake takes, and what came out of it."""
