"""Reactions: what must not meet, in one vessel, on one shelf, in one bay or on one car.

The shop's own rules and the net of what labels say come first, then the chart. A blank cell is "nothing
found", never "safe". Values in, values out.
"""
