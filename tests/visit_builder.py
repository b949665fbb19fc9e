"""Synthetic visits of any length for tests and benchmarks: an invented house, two devices, a realistic mix of acts.

The shares of the acts are our own guess at a four-hour visit (common practice, no source). The same ``n`` and
``seed`` always give the same entries, to the byte.
"""

from __future__ import annotations

import random
from datetime import UTC, datetime, timedelta, timezone
from hashlib import sha256

from witnessmark.journal.acts import (
    Accepted,
    Amended,
    Arrived,
    Body,
    Count,
    Doubted,
    Dropped,
    Found,
    Identified,
    Listed,
    Placed,
    Ran,
    Read,
    Saw,
    Settled,
    Skipped,
    Stopped,
    Took,
)
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.identity import Ids
from witnessmark.journal.pen import Pen

__all__ = ["START", "build_visit"]

#: When the built visit begins: half past nine in Seattle, in winter.
START = datetime(2026, 2, 3, 9, 30, tzinfo=timezone(timedelta(hours=-8)))

_PLACES = (
    ("north face", "outside-face"), ("south face", "outside-face"), ("roof", "roof"), ("attic", "attic"), ("crawl space", "crawl-space"),
    ("kitchen", "kitchen"), ("upper bathroom", "bathroom"), ("hall", "hall"), ("garage", "garage"), ("main bedroom", "bedroom"),
)  # fmt: skip
_KINDS = ("range", "service-panel", "water-heater", "stair", "sink", "window", "furnace", "receptacle", "gutter")
_SEEN = (
    "water stain below the tray", "finish worn", "drip at the trap", "no drip after ten minutes", "cover missing",
    "cracked pane, lower left", "handrail loose at the top", "damp at the sill plate", "clean and dry",
)  # fmt: skip
_READINGS = (
    ("water-temperature", "118", "[degF]"),
    ("wood-moisture", "17.5", "%"),
    ("voltage", "121", "V"),
    ("handrail-height", "35", "[in_i]"),
)

# Of a thousand acts, how many of each; the rest saw something.
_SHARES = {
    "ran": 110, "stopped": 90, "read": 110, "took": 130, "identified": 80, "listed": 70, "skipped": 25, "doubted": 20,
    "settled": 20, "found": 40, "amended": 40, "dropped": 10, "accepted": 15, "placed": 15,
}  # fmt: skip


class _Visit:
    """Writes one act after another, remembering what later acts refer to."""

    def __init__(self, seed: int) -> None:
        self.chance = random.Random(seed)  # noqa: S311 - made-up data, not secrets
        self.ids = Ids(self.chance.getrandbits)
        self.now = START.astimezone(UTC)
        job = self.ids.new(self._ms())
        self.pens = [
            Pen(job, by, device, now=lambda: self.now.astimezone(START.tzinfo), ids=self.ids)
            for by, device in (("A. Example", "phone-a"), ("B. Example", "tablet-b"))
        ]
        self.entries: list[Entry] = []
        self.places: list[str] = []
        self.components: list[tuple[str, str]] = []
        self.running: list[Entry] = []
        self.drafts: list[str] = []
        self.facts: list[Entry] = []

    def _ms(self) -> int:
        return round(self.now.timestamp() * 1000)

    def write(
        self, body: Body, *, draft: bool = False, place: str | None = None, component: str | None = None
    ) -> Entry:
        self.now += timedelta(milliseconds=self.chance.randrange(400, 9000))
        source = Source()
        if draft:
            start = len(self.entries) * 2
            source = Source(
                "speech", "walk.vtt", f"{start}.5", f"{start + 3}.25", "and there's the thing here", "act-verb"
            )
        media = (sha256(b"%d" % len(self.entries)).hexdigest(),) if isinstance(body, Took) else ()
        pen = self.pens[self.chance.random() < 0.25]
        entry = pen.write(body, place=place, component=component, media=media, source=source, draft=draft)
        self.entries.append(entry)
        return entry

    def place(self) -> None:
        name, sort = _PLACES[len(self.places) % len(_PLACES)]
        place = self.ids.new(self._ms())
        self.write(Placed(name, sort), place=place)
        self.places.append(place)

    def list(self) -> None:
        kind = self.chance.choice(_KINDS)
        component, place = self.ids.new(self._ms()), self.chance.choice(self.places)
        self.write(Listed(kind, kind.replace("-", " ")), place=place, component=component)
        self.components.append((component, place))

    def act(self) -> None:
        chance = self.chance
        name = chance.choices([*_SHARES, "saw"], [*_SHARES.values(), 1000 - sum(_SHARES.values())])[0]
        if name == "placed":
            return self.place()
        if name == "listed":
            return self.list()
        if (body := self._naming(name)) is not None:
            self.write(body)
            return None
        component, place = chance.choice(self.components)
        body = self._plain(name)
        draft = chance.random() < 0.2
        entry = self.write(body, draft=draft, place=place, component=component)
        if draft:
            self.drafts.append(entry.id)
        if isinstance(body, Ran) and body.left != "as found":
            self.running.append(entry)
        self.facts.append(entry)
        return None

    def _naming(self, name: str) -> Body | None:
        """An act upon earlier entries, or None when there is none to act upon."""
        chance = self.chance
        if name == "accepted" and self.drafts:
            named, self.drafts = tuple(self.drafts), []
            return Accepted(named)
        if not self.facts:
            return None
        of = chance.choice(self.facts[-200:])
        if name == "dropped":
            return Dropped(of.id, "said by mistake")
        if name == "amended":
            return Amended(of.id, "misread", "saw", 1, Saw(chance.choice(_SEEN)), of.place, of.component)
        if name == "settled":
            return Settled((of.id,), ("make sure",), "looked once more")
        if name == "found":
            return Found("Leak below sink", "Water drips.", "It wets the floor.", "Rot.", "Repair.", "plumber", "repair",
                         "building", "soon", rests_on=(of.id,))  # fmt: skip
        return None

    def _plain(self, name: str) -> Body:
        chance = self.chance
        if name == "ran":
            return Ran("run the water", left=chance.choice(("as found", "on", "filled")), found="off")
        if name == "stopped" and self.running:
            return Stopped("stop the water", of=self.running.pop().id, state="off")
        if name == "read":
            return Read(*chance.choice(_READINGS), spot="at the tap", instrument="meter")
        if name == "took":
            return Took("photo", f"IMG_{len(self.entries)}.jpg", "image/jpeg", damage=chance.random() < 0.3)
        if name == "identified":
            return Identified("make", "Example Works", kind="water-heater")
        if name == "skipped":
            return Skipped("behind the panel", "stored-items", "stored goods in front")
        if name == "doubted":
            return Doubted("whether the vent is connected")
        count = Count(3, 5, 1) if chance.random() < 0.1 else None
        return Saw(chance.choice(_SEEN), chance.choice(("sound", "adverse", "unclear", None)), count=count)


def build_visit(n: int, seed: int = 0) -> list[Entry]:
    """A visit of ``n`` entries (at least 25), in the order they were logged."""
    visit = _Visit(seed)
    visit.write(Arrived(("client",), "light rain", "wet", "46", "[degF]", ("water", "electricity", "natural gas")))
    for _ in range(12):
        visit.place()
    for _ in range(12):
        visit.list()
    while len(visit.entries) < n:
        visit.act()
    return visit.entries[:n]
