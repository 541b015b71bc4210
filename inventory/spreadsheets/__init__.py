"""Spreadsheets in and out: products, packs, what is on the shelf, suppliers, jobs."""
