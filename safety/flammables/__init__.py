"""Flammable stock: what category a liquid has, how much of it may stand where, and in what container.

Values in, values out. Screening arithmetic: the fire authority and the insurer may want less.
"""
