"""Classifying a mixture from its ingredients: values in, hazards with their reasons out.

The rules and their sources are those of CLP (EU), 29 CFR 1910.1200 appendix A (US), SOR/2015-17 (CA) and
UN GHS Rev 10. Each file holds one family of classes; `rules` asks them all and joins what they found.
"""
