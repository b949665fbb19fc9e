"""Units: what quantity was written, what it is in another unit, and how it is printed. The only place that converts."""

from witnessmark.units.parse import parse_quantity
from witnessmark.units.quantity import Quantity, as_difference, convert, dimension, exact, known
from witnessmark.units.say import say
from witnessmark.units.slope import as_slope

__all__ = ["Quantity", "as_difference", "as_slope", "convert", "dimension", "exact", "known", "parse_quantity", "say"]
