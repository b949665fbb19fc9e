"""Trains the weights by which the listener ranks what a statement may be about."""
