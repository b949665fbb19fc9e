"""The roll of film: which scene each photo shows and when it was taken (Pacific daylight time, 14 October 2026)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from render_demo.scenes import attic, crawl, deck, garage, hall, kitchen, living, outside, roof, upstairs, utility

__all__ = ["PHOTOS", "Photo"]


@dataclass(frozen=True, slots=True)
class Photo:
    """One photo: clock time, scene, how bright its middle tones are, how much sensor noise it has."""

    clock: str
    build: Callable[[], None]
    key: float = 0.30
    grain: float = 1.0


PHOTOS = {
    "p01": Photo("09:04:42", outside.p01, key=0.24),
    "p04": Photo("09:10:24", outside.p04),
    "p05": Photo("09:13:28", outside.p05),
    "p06": Photo("09:14:24", outside.p06),
    "p07": Photo("09:15:48", outside.p07),
    "p08": Photo("09:16:44", outside.p08),
    "p09": Photo("09:19:14", deck.p09),
    "p10": Photo("09:20:06", deck.p10),
    "p11": Photo("09:21:44", deck.p11),
    "p12": Photo("09:28:10", roof.p12, key=0.22),
    "p13": Photo("09:30:44", roof.p13),
    "p14": Photo("09:32:52", roof.p14),
    "p02": Photo("09:06:44", kitchen.p02),
    "p15": Photo("09:39:54", kitchen.p15),
    "p16": Photo("09:46:12", kitchen.p16),
    "p17": Photo("09:44:28", kitchen.p17),
    "p18": Photo("09:51:22", living.p18, key=0.16),
    "p19": Photo("09:52:34", living.p19, key=0.24),
    "p20": Photo("09:55:18", living.p20),
    "p22": Photo("10:02:22", upstairs.p22),
    "p23": Photo("10:16:18", upstairs.p23),
    "p24": Photo("10:21:04", attic.p24, key=0.2, grain=1.5),
    "p25": Photo("10:22:14", attic.p25, key=0.16, grain=1.5),
    "p28": Photo("10:46:06", upstairs.p28, key=0.24),
    "p26": Photo("10:31:04", garage.p26),
    "p27": Photo("10:33:44", garage.p27),
    "p29": Photo("10:49:20", garage.p29),
    "p30": Photo("10:52:40", utility.p30),
    "p31": Photo("10:56:34", utility.p31),
    "p32": Photo("11:00:02", utility.p32, key=0.2),
    "p33": Photo("11:06:12", crawl.p33, key=0.16, grain=1.5),
    "p34": Photo("11:08:04", crawl.p34, key=0.2, grain=1.3),
    "p35": Photo("11:10:12", crawl.p35, key=0.17, grain=1.5),
    "p36": Photo("11:16:00", crawl.p36, key=0.22, grain=1.4),
    "p03": Photo("09:09:34", hall.p03, key=0.42),
    "p21": Photo("09:57:24", hall.p21),
}
