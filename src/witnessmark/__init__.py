"""Witnessmark: carries everything a home inspector sees, says, does and measures through to the report."""

__all__ = ["__version__"]

__version__ = "0.1.0"
