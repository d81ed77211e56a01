"""What the reader sees: views, templates, and the spelling of numbers."""
