"""A folder of a firm's own packs, begun: files that are valid as they stand and show how each thing is written."""

from __future__ import annotations

from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.packs import read_packs
from witnessmark.problems import Refusal

__all__ = ["start_overlay"]

_HEAD = """# {about}
#
# A row here stands in for the shipped row of the same id; other rows are added. `witnessmark packs check --overlay .`
# checks this folder, `witnessmark packs changes --overlay .` lists what it changes. Keys: docs/packs/keys.md.
pack = "{pack}"
version = "1"
source = "{firm}"
tag = "common practice, no source"
in_force = "{day}"
"""
_FILES = {
    "conditions.toml": (
        "Conditions of your own: what you see, and how you put it for a client.",
        """
[[condition]]
id = "sink.our-slow-drain"
kinds = ["sink"]
name = "slow drain"
spoken = ["drains slowly", "slow to drain", "backing up a little"]
observation = "The sink drained slowly with the stopper open."
implication = "Something narrows the drain."
if_left = "It can block, and water can come back up."
do = "Have the drain cleared."
by = "plumber"
direct = "repair"
stake = "function"
urgency = "plan"
because = "It still drains; it gets worse over months."
evidence = "a short video of the water going down"
""",
    ),
    "procedures.toml": (
        "How you operate things by their normal controls, and what has to be looked at again.",
        """
[[procedure]]
id = "our-tub-overflow"
kind = "bathtub"
name = "fill the tub to above its drain"
how = "with the stopper closed, by the faucet"
leaves = "filled"
said = ["filling the tub"]
put_back = "open the stopper"
at_most = 20
look_again = { words = "look at the ceiling below", why = "a leak shows only when there is water above it", earliest = 5, latest = 40 }
""",
    ),
    "wording.toml": (
        "Sentences of your own for the report, with the same gaps as the shipped ones, and your own translations.",
        """
[[translation]]
id = "es.condition.sink.our-slow-drain"
language = "es"
table = "condition"
of = "sink.our-slow-drain"
name = "desagüe lento"
observation = "El fregadero se vació despacio con el tapón abierto."
implication = "Algo estrecha el desagüe."
if_left = "Puede taparse y el agua puede regresar."
do = "Haga que destapen el desagüe."
""",
    ),
    "scenarios/slow-drain.toml": (
        "",
        """title = "A slow drain is to be written up"
date = "{day}"
source = "{firm}"

[house]
places = {{ kitchen = "kitchen" }}
things = {{ "k.sink" = "sink at kitchen" }}

[[act]]
at = "09:10"
act = "saw"
thing = "k.sink"
what = "drains slowly"
state = "adverse"
condition = "sink.our-slow-drain"

[expect]
write_up = ["k.sink"]
findings = ["sink.our-slow-drain"]
""",
    ),
}
_LAW = """
# A correction of one duty: copy its whole row from the law's page in docs/packs, change what is wrong, and say in
# `source` where you read it. It then stands in for the shipped row, and is shown with your tag.
corrects = "{rulebook}"
"""


def start_overlay(folder: Path, *, firm: str, day: str, rulebook: str = "") -> tuple[Path, ...]:
    """Write a folder of packs to begin from, for a *firm*, in force from *day*; returns the files written.

    Raises:
        Refusal: WM918 when the folder already holds a pack; nothing is written then.
    """
    if folder.exists() and any(folder.rglob("*.toml")):
        raise Refusal(messages.OVERLAY_THERE.at(str(folder)))
    known = read_packs().rulebooks
    name = rulebook or next(iter(sorted(known)), "")
    if name not in known:
        raise Refusal(messages.NO_SUCH_PACK_ID.at(repr(name), f"rulebooks: {', '.join(sorted(known))}"))
    firm = firm.replace("\\", " ").replace('"', "'")
    written = []
    for file, (about, body) in _FILES.items():
        head = _HEAD.format(about=about, pack=f"own.{Path(file).stem}", firm=firm, day=day) if about else ""
        text = head + (body if about else body.format(firm=firm, day=day))
        written.append(_write(folder / file, text))
    head = _HEAD.format(about="Corrections of a law.", pack="own.law", firm=firm, day=day)
    written.append(_write(folder / "law.toml", head + _LAW.format(rulebook=name) + _first_duty(name)))
    return tuple(written)


def _first_duty(rulebook: str) -> str:
    """The first definition of the law as a row to change, commented out: a correction is never made for the user."""
    duties = [d for d in read_packs().rulebooks[rulebook].duties if d.provenance.tag.startswith("memory")]
    shown = duties[0] if duties else read_packs().rulebooks[rulebook].duties[0]
    rows = (
        f'[[duty]]\nid = "{shown.id}"\nsection = "{shown.section}"\nsystem = "{shown.system}"\nverb = "{shown.verb}"\n'
        f'modality = "{shown.modality}"\nwords = "{shown.words}"\nsource = "{shown.section}, read on ..."\ntag = "seen"'
    )
    return "\n" + "\n".join(f"# {line}" for line in rows.splitlines()) + "\n"


def _write(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path
