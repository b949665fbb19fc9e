"""Drawings of the report, made by hand as SVG: few lines, ink and one accent, legible in grey, each told in words too."""

from witnessmark.report.drawings.all import drawings_of

__all__ = ["drawings_of"]
