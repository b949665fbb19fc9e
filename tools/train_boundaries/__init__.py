"""Learns where statements begin, from narrations and text that we wrote."""
