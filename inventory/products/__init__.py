"""Products: what the shop keeps, its lives, its packs and its data sheet."""
