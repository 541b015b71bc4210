"""What the people pages read."""
