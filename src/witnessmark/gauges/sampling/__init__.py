"""Gauges of the family sampling."""
