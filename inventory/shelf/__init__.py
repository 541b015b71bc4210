"""Shelf: what stands where, until when, and one bottle's life."""
