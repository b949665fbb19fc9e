"""Gauges of the family fuel."""
