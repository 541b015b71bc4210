"""What the bays' pages write."""
