"""What the features share: the rules of stock, the ledger, the conversation, the questions they ask of it."""
