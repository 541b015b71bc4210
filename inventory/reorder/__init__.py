"""What to order this month, from whom, and why."""
