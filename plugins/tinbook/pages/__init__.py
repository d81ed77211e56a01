"""What the reader sees: views, templates, and how numbers are written."""
