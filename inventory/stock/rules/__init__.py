"""Pure decisions about stock: fold, use by, reservation, the chain. No clock, no database."""
