"""Which conductor a written size means: AWG numbers and kcmil kept apart, and refused where they are mixed up."""

from __future__ import annotations

import math
import re

from witnessmark.gauges.electrical.calculating.messages import BAD_SIZE
from witnessmark.problems import Refusal

__all__ = ["CIRCULAR_MILS", "SIZES", "Spellings", "awg_circular_mils", "printed_size", "read_size"]

#: Cross-section in circular mils, NEC chapter 9 Table 8, in order of size (names as in the tables).
CIRCULAR_MILS = {
    "14": 4110, "12": 6530, "10": 10380, "8": 16510, "6": 26240, "4": 41740, "3": 52620, "2": 66360, "1": 83690,
    "1/0": 105600, "2/0": 133100, "3/0": 167800, "4/0": 211600, "250": 250000, "300": 300000, "350": 350000,
    "400": 400000, "500": 500000, "600": 600000,
}  # fmt: skip
_LEAST_KCMIL = 250
_OUGHTS = {"0": "1/0", "00": "2/0", "000": "3/0", "0000": "4/0"}
_WRITTEN = re.compile(r"(?:#|no\.?)?\s*([0-9]+/0|[0-9]+(?:\.[0-9]+)?)\s*-?\s*([a-z.²0-9]*)")
_KCMIL = frozenset({"kcmil", "mcm", "k", "kcm"})
_METRIC = frozenset({"mm2", "mm²", "mm", "sqmm"})


class Spellings(tuple[str, ...]):
    """The sizes that help and tests show; every other spelling is let through to `read_size`, which says what is wrong."""

    __slots__ = ()

    def __contains__(self, key: object) -> bool:
        """Any text, so that `read_size` can refuse a wrong one with advice instead of a bare list.

        >>> "12 kcmil" in SIZES
        True
        """
        return isinstance(key, str)


def printed_size(size: str) -> str:
    """A size of the tables as it is printed: AWG up to 4/0, kcmil from 250.

    >>> printed_size("12"), printed_size("250")
    ('12 AWG', '250 kcmil')
    """
    return f"{size} kcmil" if size.isdigit() and int(size) >= _LEAST_KCMIL else f"{size} AWG"


SIZES = Spellings(printed_size(size) for size in CIRCULAR_MILS)


def awg_circular_mils(gauge: int) -> float:
    """Cross-section in circular mils of a solid wire of an AWG number (1/0 is 0, 2/0 is -1), by ASTM B258.

    Diameter in mils 5 * 92^((36 - n)/39), squared; valid from 4/0 (-3) to 40.

    >>> round(awg_circular_mils(12))
    6530
    """
    return float((5 * 92 ** ((36 - gauge) / 39)) ** 2)


def _nearest_awg(kcmil: float) -> str:
    number = round(36 - 39 * math.log(math.sqrt(kcmil * 1000) / 5, 92))
    name = str(number) if number > 0 else f"{1 - number}/0"
    return f"{kcmil:g} kcmil is about {name} AWG; did you mean {kcmil:g} AWG?"


def read_size(text: str, where: str = "size") -> str:
    """The size of the tables that *text* writes: "12", "#12", "12 AWG", "2/0", "00", "250 kcmil", "250 MCM".

    Refuses (WM055) what is on the wrong scale or in no table, and says what was probably meant.

    >>> read_size("#12 AWG"), read_size("000"), read_size("250 MCM")
    ('12', '3/0', '250')
    """
    found = _WRITTEN.fullmatch(text.strip().lower())
    if found is None:
        raise Refusal(BAD_SIZE.at(f"{where}={text!r}", f"one of {', '.join(SIZES)}"))
    number, unit = found[1], found[2].strip()
    name = _OUGHTS.get(number, number)
    if unit in _METRIC:
        detail = "square millimetres are another scale; read the AWG or kcmil number on the cable"
    elif unit in _KCMIL:
        if "/" in number:
            detail = f"{number} is an AWG size; did you mean {number} AWG?"
        elif number in CIRCULAR_MILS and int(number) >= _LEAST_KCMIL:
            return number
        else:
            kcmil = float(number)
            small = 0 < kcmil < _LEAST_KCMIL
            exact = next(
                (s for s, mils in CIRCULAR_MILS.items() if math.isclose(mils / 1000, kcmil, abs_tol=0.006)), ""
            )
            detail = f"{kcmil:g} kcmil is the cross-section of {printed_size(exact)}; write that" if exact else ""
            detail = detail or (_nearest_awg(kcmil) if small else f"one of {', '.join(SIZES)}")
    elif unit not in {"", "awg", "ga", "gauge"}:
        detail = f"unit {unit!r}; write AWG or kcmil"
    elif name not in CIRCULAR_MILS:
        detail = f"one of {', '.join(SIZES)}"
    elif unit and name.isdigit() and int(name) >= _LEAST_KCMIL:
        detail = f"there is no {name} AWG; did you mean {name} kcmil?"
    else:
        return name
    raise Refusal(BAD_SIZE.at(f"{where}={text!r}", detail))
