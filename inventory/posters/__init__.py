"""Posters and labels: what a place admits, what was printed of it, what a bottle's label says."""
