"""The only place where a number or a state becomes words."""
