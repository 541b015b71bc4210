"""Bays: what the instruments read there, what may spark, what the air does, and what is breathed today."""
