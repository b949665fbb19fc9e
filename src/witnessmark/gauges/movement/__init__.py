"""Gauges of the family movement."""
