"""People: who works here, who may do what, who signs in."""
