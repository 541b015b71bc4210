"""The shelf of a paint-correction and coating shop."""
