"""The facts of a job: the property, the people and the law in force. Stored as ``job.toml`` in the job folder."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Alteration", "Job"]


@dataclass(frozen=True, slots=True)
class Alteration:
    """Something built or changed later than the house: what, and in which year."""

    what: str
    year: int


@dataclass(frozen=True, slots=True)
class Job:
    """What is known of the property and the job before anyone enters the house.

    Attributes:
        id: UUID of the job.
        address: street address of the property.
        town: town, state and postcode, as printed.
        client: for whom the inspection is made.
        inspector: who inspects.
        licence: the inspector's licence number, as printed.
        rulebook: id of the rulebook in force (``us.wa.308-408c``).
        date: date of the visit, ISO 8601.
        year_built: year the house was built, where known.
        altered: later alterations with their years.
        storeys: number of storeys above grade.
        area: floor area as a decimal string, with ``area_unit`` (UCUM, ``[sft_i]`` for square feet).
        foundation: words such as "crawl space".
        occupied: whether people live there at the time.
        fuels: fuels used in the house (``natural gas``, ``oil``, ``wood``).
        attached_garage: whether a garage is attached.
        firm: name of the firm, where there is one.
        invented: the job is made up for demonstration or tests; every product says so.
        note: anything else.
        outlook: the client asked, in the agreement, to be told how long ageing parts may go on.
    """

    id: str
    address: str = ""
    town: str = ""
    client: str = ""
    inspector: str = ""
    licence: str = ""
    rulebook: str = ""
    date: str = ""
    year_built: int | None = None
    altered: tuple[Alteration, ...] = ()
    storeys: str | None = None
    area: str | None = None
    area_unit: str | None = None
    foundation: str | None = None
    occupied: bool | None = None
    fuels: tuple[str, ...] = ()
    attached_garage: bool | None = None
    firm: str | None = None
    invented: bool = False
    note: str | None = None
    outlook: bool = False
