"""What the people pages write."""
