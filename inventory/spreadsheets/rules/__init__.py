"""Decisions about spreadsheets: what a cell says, what a row becomes. Pure."""
