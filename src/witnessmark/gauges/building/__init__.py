"""Gauges of the family building."""
