"""Flammable stock: categories, sums, containers."""
