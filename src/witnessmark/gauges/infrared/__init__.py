"""Gauges of the family infrared."""
