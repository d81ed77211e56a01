"""Tinbook: a recipe book for one celebration-cake maker."""
