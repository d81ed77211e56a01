"""What every page is made of: templates, tables, drawings."""
