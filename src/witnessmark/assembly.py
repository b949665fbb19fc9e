"""The one place that wires stores and services."""
