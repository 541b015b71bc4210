"""Facts of the trade: what a product leaves, lifts and forbids, what a surface bears, and what must wait."""
