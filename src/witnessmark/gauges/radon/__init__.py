"""Gauges of the family radon."""
