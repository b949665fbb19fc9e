"""Gauges of the family age."""
