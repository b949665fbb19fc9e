"""Gauges of the family water."""
