"""The first page: what needs a hand today, and nothing else."""
