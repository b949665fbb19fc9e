"""Gauges of the family electrical."""
