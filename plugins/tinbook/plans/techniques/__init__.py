"""A technique: its times and kit, its parts, colours and marks."""
