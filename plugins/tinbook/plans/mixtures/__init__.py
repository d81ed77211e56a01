"""A mixture by itself: its batches, its balance, its steps, and the cautions that go with it."""
