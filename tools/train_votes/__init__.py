"""Trains the weights of the listener's vote on what a statement is."""
