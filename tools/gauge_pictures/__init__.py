"""The pictures in docs/gauges/, drawn by the gauges' own formulas: one module a family, ``PICTURES`` by gauge name."""
