"""The roll of film: which scene each photo shows and when it was taken (Pacific daylight time, 14 October 2026)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from tools.render_demo.scenes import attic, crawl, deck, garage, hall, kitchen, living, outside, roof, upstairs, utility

__all__ = ["PHOTOS", "Photo"]


@dataclass(frozen=True, slots=True)
class Photo:
    """One photo: clock time, scene, how bright its middle tones are, how much sensor noise it has."""

    clock: str
    build: Callable[[], None]
    key: float = 0.30
    grain: float = 1.0


PHOTOS = {
    "p01": Photo("09:05:10", outside.p01, key=0.24),
    "p04": Photo("09:12:20", outside.p04),
    "p05": Photo("09:14:30", outside.p05),
    "p06": Photo("09:15:40", outside.p06),
    "p07": Photo("09:17:50", outside.p07),
    "p08": Photo("09:18:50", outside.p08),
    "p09": Photo("09:20:40", deck.p09),
    "p10": Photo("09:21:30", deck.p10),
    "p11": Photo("09:23:10", deck.p11),
    "p12": Photo("09:28:00", roof.p12, key=0.22),
    "p13": Photo("09:31:00", roof.p13),
    "p14": Photo("09:33:10", roof.p14),
    "p02": Photo("09:06:50", kitchen.p02),
    "p15": Photo("09:40:30", kitchen.p15),
    "p16": Photo("09:46:10", kitchen.p16),
    "p17": Photo("09:47:30", kitchen.p17),
    "p18": Photo("09:52:00", living.p18, key=0.16),
    "p19": Photo("09:54:30", living.p19, key=0.24),
    "p20": Photo("09:57:40", living.p20),
    "p22": Photo("10:08:30", upstairs.p22),
    "p23": Photo("10:14:00", upstairs.p23),
    "p24": Photo("10:21:00", attic.p24, key=0.2, grain=1.5),
    "p25": Photo("10:24:00", attic.p25, key=0.16, grain=1.5),
    "p28": Photo("10:44:30", upstairs.p28, key=0.24),
    "p26": Photo("10:33:30", garage.p26),
    "p27": Photo("10:36:00", garage.p27),
    "p29": Photo("10:48:00", garage.p29),
    "p30": Photo("10:53:00", utility.p30),
    "p31": Photo("10:55:30", utility.p31),
    "p32": Photo("10:58:30", utility.p32, key=0.2),
    "p33": Photo("11:07:00", crawl.p33, key=0.16, grain=1.5),
    "p34": Photo("11:09:30", crawl.p34, key=0.2, grain=1.3),
    "p35": Photo("11:12:00", crawl.p35, key=0.17, grain=1.5),
    "p36": Photo("11:16:00", crawl.p36, key=0.22, grain=1.4),
    "p03": Photo("09:09:40", hall.p03, key=0.42),
    "p21": Photo("10:02:00", hall.p21),
}
