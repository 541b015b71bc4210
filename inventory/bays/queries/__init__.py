"""What the bays' pages show."""
