"""Gauges of the family air."""
