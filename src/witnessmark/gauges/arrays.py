"""A long series at once: equilibrium moisture content and dew point of many readings.

With NumPy the values are computed in pieces that stay in the processor's cache and come back as one array; without it
they are computed one by one and come back as a list. Both follow `wood.emc_percent` and `air.dew_point_celsius`, and
agree with them to 1e-9. A gap in a logger's series (NaN) stays a gap.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any, TypeAlias

from witnessmark.gauges.air import saturation
from witnessmark.gauges.air.sources import Coefficients
from witnessmark.gauges.messages import CANNOT_BE
from witnessmark.gauges.wood.sorption import COLDEST, HOTTEST, METRIC, emc_percent
from witnessmark.problems import Refusal

if TYPE_CHECKING:
    import numpy.typing as npt

try:
    import numpy as np
except ImportError:  # pragma: no cover - the package runs without it, in a browser for one; then lists come back
    NUMPY = False
else:
    NUMPY = True

__all__ = ["dew_point", "equilibrium_moisture_content"]

Values: TypeAlias = "Sequence[float] | float | npt.NDArray[Any]"
Computed: TypeAlias = "list[float] | npt.NDArray[Any]"

#: Values computed at a time: the dozen arrays in between then stay in the processor's second-level cache.
PIECE = 8192


def equilibrium_moisture_content(celsius: Values, humidity: Values) -> Computed:
    """Equilibrium moisture content in % of wood for each temperature in °C and relative humidity 0 to 1 (a fraction).

    Either may be a single number for a whole series of the other. Arrays come back in the common shape with NumPy, a
    list without. Valid range and source as `wood.emc_percent`. Refuses (WM006) what cannot be: humidity outside 0 to 1
    (a percentage, most likely), temperature outside -50 to 132.3 °C, two series of unequal length.

    >>> [round(float(value), 2) for value in equilibrium_moisture_content([20.0, 30.0], [0.5, 0.3])]
    [9.27, 5.99]
    """
    return _each(celsius, humidity, emc_percent, _emc_piece, (COLDEST, HOTTEST))


def dew_point(celsius: Values, humidity: Values) -> Computed:
    """Dew point in °C (below 0.01 °C the frost point, over ice) for each temperature in °C and humidity 0 to 1.

    Shapes and refusals as `equilibrium_moisture_content`, temperature -100 to 200 °C; NaN where air has no dew point
    (`air.dew_point_celsius`, which also names the source).

    >>> [round(float(value), 2) for value in dew_point([20.0, 0.0], [0.5, 0.8])]
    [9.27, -2.68]
    """
    return _each(celsius, humidity, saturation.dew_point_celsius, _dew_piece, (-100.0, 200.0))


def _each(
    celsius: Values,
    humidity: Values,
    one: Callable[[float, float], float],
    piece: Callable[[Any, Any, Any], None],
    between: tuple[float, float],
) -> Computed:
    if not NUMPY:
        return _list(celsius, humidity, one, between)
    t, h = np.asarray(celsius, dtype=np.float64), np.asarray(humidity, dtype=np.float64)
    if t.shape != h.shape:
        if t.ndim and h.ndim:
            raise Refusal(CANNOT_BE.at("celsius and humidity", f"their shapes are {t.shape} and {h.shape}"))
        t, h = np.broadcast_arrays(t, h)
    _refuse_beyond("celsius", t, *between)
    _refuse_beyond("humidity", h, 0.0, 1.0)
    out: npt.NDArray[Any] = np.empty(t.shape)
    flat_t, flat_h, flat_out = t.reshape(-1), h.reshape(-1), out.reshape(-1)
    with np.errstate(all="ignore"):  # gaps and dry air are NaN by intent
        for start in range(0, flat_t.size, PIECE):
            part = slice(start, start + PIECE)
            piece(flat_t[part], flat_h[part], flat_out[part])
    return out


def _list(
    celsius: Values, humidity: Values, one: Callable[[float, float], float], between: tuple[float, float]
) -> list[float]:
    t = [float(celsius)] if isinstance(celsius, int | float) else [float(value) for value in celsius]
    h = [float(humidity)] if isinstance(humidity, int | float) else [float(value) for value in humidity]
    t = t * len(h) if isinstance(celsius, int | float) else t
    h = h * len(t) if isinstance(humidity, int | float) else h
    if len(t) != len(h):
        raise Refusal(CANNOT_BE.at("celsius and humidity", f"they hold {len(t)} and {len(h)} values"))
    for name, values, least, most in (("celsius", t, *between), ("humidity", h, 0.0, 1.0)):
        for at, value in enumerate(values):
            if value < least or value > most:
                raise Refusal(_beyond(name, at, value, least, most))
    return [math.nan if a != a or b != b else one(a, b) for a, b in zip(t, h, strict=True)]  # noqa: PLR0124 - NaN


def _beyond(name: str, at: int, value: float, least: float, most: float) -> Any:  # noqa: ANN401 - a Problem
    unit = "; give a fraction, 0.5 for 50 %" if name == "humidity" else " °C"
    return CANNOT_BE.at(f"{name}[{at}]", f"{value:g} is not between {least:g} and {most:g}{unit}")


def _refuse_beyond(name: str, values: Any, least: float, most: float) -> None:  # noqa: ANN401 - an array
    if values.size and not (np.fmin.reduce(values, axis=None) >= least and np.fmax.reduce(values, axis=None) <= most):
        wrong = np.flatnonzero((values.reshape(-1) < least) | (values.reshape(-1) > most))
        if wrong.size:
            raise Refusal(_beyond(name, int(wrong[0]), float(values.reshape(-1)[wrong[0]]), least, most))


def _emc_piece(t: Any, h: Any, out: Any) -> None:  # noqa: ANN401 - arrays
    """`emc_percent` of one piece, written into *out*; the same terms in the same order."""

    def quadratic(c: tuple[float, float, float]) -> Any:  # noqa: ANN401 - an array
        made = t * c[2]
        made += c[1]
        made *= t
        made += c[0]
        return made

    kh = quadratic(METRIC.k)
    kh *= h
    k1kh = quadratic(METRIC.k1)
    k1kh *= kh
    double = quadratic(METRIC.k2)
    double *= kh
    double *= k1kh
    top = double * 2
    top += k1kh
    k1kh += double
    k1kh += 1
    top /= k1kh
    free = 1 - kh
    kh /= free
    top += kh
    np.divide(1800, quadratic(METRIC.w), out=out)
    out *= top


def _log_pressure(kelvin: Any, c: Coefficients, log: Any) -> Any:  # noqa: ANN401 - arrays
    made = kelvin * c[5]
    for coefficient in (c[4], c[3], c[2]):
        made += coefficient
        made *= kelvin
    made += c[0] / kelvin
    made += c[1]
    made += c[6] * log
    return made


def _solve(log_pressure: Any, c: Coefficients, magnus: tuple[float, float, float]) -> Any:  # noqa: ANN401 - arrays
    a, b, p0 = magnus
    off = log_pressure - math.log(p0)
    kelvin = b * off
    kelvin /= a - off
    kelvin += saturation.KELVIN
    for _ in range(saturation.NEWTON_STEPS):
        slope = kelvin * (4 * c[5])
        for coefficient in (3 * c[4], 2 * c[3]):
            slope += coefficient
            slope *= kelvin
        slope += c[2]
        part = -c[0] / kelvin
        part += c[6]
        part /= kelvin
        slope += part
        off = _log_pressure(kelvin, c, np.log(kelvin))
        off -= log_pressure
        off /= slope
        kelvin -= off
    kelvin -= saturation.KELVIN
    return kelvin


def _dew_piece(t: Any, h: Any, out: Any) -> None:  # noqa: ANN401 - arrays
    """`dew_point_celsius` of one piece, written into *out*; over water or over ice by the same two questions."""
    kelvin = t + saturation.KELVIN
    log = np.log(kelvin)
    wet = t > saturation.TRIPLE_POINT
    log_pressure = (
        _log_pressure(kelvin, saturation.WATER, log)
        if wet.all()
        else np.where(wet, _log_pressure(kelvin, saturation.WATER, log), _log_pressure(kelvin, saturation.ICE, log))
    )
    log_pressure += np.log(h)
    icy = log_pressure < saturation.LOG_TRIPLE
    if not icy.any():
        out[:] = _solve(log_pressure, saturation.WATER, saturation.MAGNUS_WATER)
        return
    liquid = ~icy
    out[liquid] = _solve(log_pressure[liquid], saturation.WATER, saturation.MAGNUS_WATER)
    out[icy] = _solve(log_pressure[icy], saturation.ICE, saturation.MAGNUS_ICE)
    out[log_pressure < saturation.LOG_LOWEST] = math.nan
