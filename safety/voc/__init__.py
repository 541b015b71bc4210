"""Volatile organic compounds: what a product holds of them, and what a law lets it hold. Pure."""
