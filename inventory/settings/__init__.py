"""Settings: the shop's facts, its places and its scan stations."""
