"""Air: what people breathe while something evaporates, against the limits, and what would mend it.

Screening arithmetic for a workshop: it never replaces a competent person's assessment. Values in, values out.
"""
