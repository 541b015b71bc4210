"""The scan station: its page, its device, and the facts that its conversation needs."""
