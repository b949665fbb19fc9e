"""A small invented visit with one of everything a report has to tell, built by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from hashlib import sha256
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageDraw

from record_builder import START, Visit, after
from witnessmark.journal.acts import (
    Absent,
    Amended,
    Arrived,
    Count,
    Doubted,
    Dropped,
    Found,
    Identified,
    Left,
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
from witnessmark.journal.entry import Source
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Alteration, Job
from witnessmark.judging.model import (
    DutyCoverage,
    JudgedReading,
    LooseEnd,
    Standing,
    SubjectCoverage,
)
from witnessmark.packs.model import (
    Attribute,
    Caution,
    Criterion,
    Definition,
    Duty,
    Kind,
    LookAgain,
    Measure,
    PackFile,
    Packs,
    Part,
    Procedure,
    Provenance,
    Reason,
    Rulebook,
    Trade,
)
from witnessmark.report import Letter, compose

__all__ = ["ISSUED", "JOB", "PACKS", "Given", "given", "jpeg", "letter_of"]

ISSUED = datetime.fromisoformat("2026-02-03T18:00:00-08:00")
_SEEN = Provenance("an invented law", "2020-01-01", "seen", "law.toml")
_RECALLED = replace(_SEEN, tag="memory")


def _duty(name: str, section: str, verb: str, words: str, provenance: Provenance = _SEEN, **more: object) -> Duty:
    row = Duty(name, section, "plumbing", verb, "shall", words, provenance, tracked=True)
    return replace(row, **more)  # type: ignore[arg-type] # the names are fields of Duty


_INSPECT = _duty("D-1", "1(a)", "inspect", "inspect fixtures and drains", _RECALLED)
_DESCRIBE = _duty("D-2", "1(b)", "describe", "describe the supply piping", mandatory_text="Words the law fixes.")
_COOL = _duty("D-3", "2", "operate", "operate the cooling", system="cooling")
_REFUSED = _duty("D-4", "3", "notreq", "move stored items", modality="not_required", tracked=False)
_NEVER = _duty("D-5", "4", "ethics", "hide a defect", modality="shall_not", tracked=False, system="conduct")
_DELIVER = _duty("D-6", "5", "deliver", "deliver the report in time", tracked=False, system="report")

_LIMIT = Criterion(
    "tap", "water-temperature", "<=", "120", "[degF]", "Water above 120 °F scalds", "An Invented Code", "2020", "7.1",
    "guide", _RECALLED,
)  # fmt: skip

PACKS = Packs(
    kinds={
        "sink": Kind("sink", "plumbing", "sink", "sinks", ("sink",), _SEEN, parts=(Part("trap", "trap"),), cautions=("wet",)),
        "range": Kind("range", "appliances", "range", "ranges", ("range",), _SEEN),
        "main-shutoff": Kind("main-shutoff", "plumbing", "main water shutoff", "shutoffs", ("shutoff",), _SEEN),
    },
    procedures={
        "fill-sink": Procedure(
            "fill-sink", "sink", "fill and drain", "fill it, let it drain, look below", "filled", _SEEN,
            look_again=LookAgain("look under the sink", "a leak shows when it drains", 0, 30),
        ),
    },
    measures={"water-temperature": Measure("water-temperature", "water temperature", "[degF]", ("Cel",), ("hot",), _SEEN)},
    criteria={"tap": _LIMIT},
    reasons={"blocked": Reason("blocked", "stored items were in the way", ("blocked",), _SEEN)},
    cautions={"wet": Caution("wet", "Water and electricity together can kill.", _SEEN)},
    trades={"plumber": Trade("plumber", "a licensed plumber", _SEEN)},
    attributes={"made": Attribute("made", "date of manufacture", ("made",), (), _SEEN)},
    rulebooks={
        "xx.invented": Rulebook(
            "xx.invented", "Invented standard of practice", "xx", "XX 1", "2020-01-01", "never: it is invented",
            (_INSPECT, _DESCRIBE, _COOL, _REFUSED, _NEVER, _DELIVER), _SEEN,
            definitions=(Definition("operate", "run by normal controls", "0", "memory?"),), retain_years=3,
        ),
    },
    files=(PackFile("xx.invented", "1", "ab" * 32, "xx.toml"),),
)  # fmt: skip

JOB = Job(
    id="job", address="1 Teasel Row", town="Mallow, XX 00000", client="Noa Fernsby", inspector="Odd Quayle",
    licence="XX-1 (invented)", rulebook="xx.invented", date="2026-02-03", year_built=1961,
    altered=(Alteration("kitchen rebuilt", 1999),), area="1800", area_unit="[sft_i]", occupied=True,
    fuels=("natural gas",), attached_garage=False, firm="Quayle and Daughter (invented)", invented=True,
)  # fmt: skip


def jpeg(text: str = "a picture", size: tuple[int, int] = (64, 48)) -> bytes:
    """A small JPEG, the same bytes for the same words."""
    image = Image.new("RGB", size, (180, 170, 150))
    ImageDraw.Draw(image).line((0, 0, size[0], size[1] - sum(map(ord, text)) % size[1]), fill=(40, 60, 90), width=3)
    out = BytesIO()
    image.save(out, "JPEG")
    return out.getvalue()


@dataclass
class Given:
    """What ``compose`` is given."""

    job: Job
    record: Record
    packs: Packs
    standing: Standing
    files: dict[str, Path]
    pictures: dict[str, Path] = field(default_factory=dict)


def _keep(folder: Path, name: str, data: bytes) -> tuple[str, Path]:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / name
    path.write_bytes(data)
    # The hash of the name: that of the picture would change with the JPEG library.
    return sha256(name.encode()).hexdigest(), path


def given(folder: Path, *, job: Job = JOB, blocked: bool = True) -> Given:
    """The visit, its files in *folder*; *blocked*: a doubt and a duty are open."""
    drip_sha, drip = _keep(folder, "drip.jpg", jpeg("drip"))
    wall_sha, wall = _keep(folder, "wall.jpg", jpeg("wall"))
    heat_sha, heat = _keep(folder, "heat.tif", b"II*\0 sixteen bits of grey")
    _, heat_shown = _keep(folder, "heat.jpg", jpeg("heat", (32, 24)))
    talk_sha, talk = _keep(folder, "talk.vtt", b"WEBVTT\n")
    visit = Visit()
    visit.add(Arrived(("Noa Fernsby",), "dry and cold", "frozen", "31", "[degF]", ("water",)), 0)  # e001
    visit.add(Placed("kitchen", "room"), 1, place="kitchen")  # e002
    visit.add(Listed("sink", "kitchen sink"), 2, place="kitchen", component="sink")  # e003
    said = Source("speech", "talk.vtt", "200", "204.5", "filling the left side")
    visit.add(  # e004
        Ran("left bowl filled", kind="sink", procedure="fill-sink", left="filled", found="empty"),
        3, place="kitchen", component="sink", source=said,
    )  # fmt: skip
    visit.add(Stopped("drained", of="e004", state="empty"), 8, place="kitchen", component="sink")  # e005
    visit.add(  # e006
        Saw("drip at the trap nut", "adverse", "trap", again="e004"), 9, place="kitchen", component="sink",
        source=Source("speech", "talk.vtt", "530", "534", "there's a drip right at the nut"),
    )  # fmt: skip
    visit.add(  # e007
        Read("water-temperature", "138", "[degF]", spot="at the tap", instrument="thermometer"),
        10, place="kitchen", component="sink",
    )  # fmt: skip
    visit.add(Took("photo", "drip.jpg", "image/jpeg", "drip under the sink", ("e006",)), 9.5, media=(drip_sha,))  # e008
    visit.add(Took("thermal", "heat.tif", "image/tiff", "cold patch"), 11, place="kitchen", media=(heat_sha,))  # e009
    visit.add(Took("voice", "talk.vtt", "text/vtt"), 12, media=(talk_sha,))  # e010
    visit.add(Took("photo", "gone.jpg", "image/jpeg", "lost on the way"), 13, media=("00" * 32,))  # e011
    visit.add(Took("photo", "wall.jpg", "image/jpeg"), 14, place="kitchen", media=(wall_sha,))  # e012
    visit.add(Skipped("north wall", "blocked", None), 15, place="kitchen")  # e013
    visit.add(Absent("range", what="no bracket", adverse=True), 16, place="kitchen")  # e014
    visit.add(Listed("main-shutoff"), 17, place="kitchen", component="shutoff")  # e015
    visit.add(Identified("made", "1999"), 18, place="kitchen", component="shutoff")  # e016
    visit.add(Doubted("whether the stain is old", "e006"), 19, place="kitchen")  # e017
    visit.add(Saw("two windows open and close", "sound", count=Count(2, 5)), 20, place="kitchen")  # e018
    visit.add(Ran("tap opened", kind="sink"), 21, place="kitchen", component="sink")  # e019
    visit.add(Saw("a crack", "adverse"), 22, place="kitchen")  # e020
    visit.add(Dropped("e020", "it was a shadow"), 23)  # e021
    visit.add(  # e022
        Found("water hot enough to scald", "138 °F at the tap.", "It scalds.", "A burn.", "Have it set lower.", "plumber",
              "repair", "people", "soon", rests_on=("e007",)),
        60, place="kitchen", component="sink",
    )  # fmt: skip
    visit.add(  # e023
        Found("drip at the trap", "A drip at the nut.", "Water in the cabinet.", "Rot.", "Repair it.", "plumber",
              "repair", "function", "plan", rests_on=("e006", "e020")),
        61, place="kitchen", component="sink",
    )  # fmt: skip
    visit.add(Amended("e007", "misread", "read", 1, Read("water-temperature", "139", "[degF]"), "kitchen", "sink"), 62)
    visit.add(Saw("perhaps a stain", "unclear"), 63, place="kitchen", draft=True)  # e025
    visit.add(Settled(("e017",), ("make sure",), "looked again: dry"), 64)  # e026
    visit.add(Left(1, "it got dark"), 90)  # e027
    met = SubjectCoverage("sinks", "met", ("e004", "e006", "e007"))
    excused = SubjectCoverage("north wall", "excused", ("e013",), "stored items were in the way")
    unmet = SubjectCoverage("supply piping", "open", (), "nothing recorded")
    unasked = SubjectCoverage("skylights", "not asked", (), "nothing of the kind was recorded")
    open_ = (
        LooseEnd("make sure", "make sure e017", "whether the stain is old", ("e017",), next="Look again."),
        LooseEnd("say why", "say why D-2/1", "1(b): supply piping", (), next="Say why.", duty="D-2", tag="memory"),
    )
    standing = Standing(
        after(95),
        (),
        (LooseEnd("name it", "name it e012", "wall.jpg", ("e012",), next="Say what it shows."), *(open_ if blocked else ())),
        (
            DutyCoverage(_INSPECT, "met", (met, excused, unasked)),
            DutyCoverage(_DESCRIBE, "open" if blocked else "met", (unmet,)),
            DutyCoverage(_COOL, "not asked", (), "no cooling"),
        ),
        (JudgedReading("e007", "beyond", "139 °F is beyond the limit, at most 120 °F (An Invented Code, 2020, 7.1).", _LIMIT),),
    )  # fmt: skip
    files = {drip_sha: drip, wall_sha: wall, heat_sha: heat, talk_sha: talk}
    return Given(job, visit.record(), PACKS, standing, files, {heat_sha: heat_shown})


def letter_of(some: Given, *, pictures: Mapping[str, Path] | None = None) -> Letter:
    """The letter of what is given, not sealed."""
    return compose(
        some.job, some.record, some.packs, some.standing, media=some.files.get, issued=ISSUED,
        pictures=some.pictures if pictures is None else pictures,
    )  # fmt: skip


assert START.date().isoformat() == JOB.date
