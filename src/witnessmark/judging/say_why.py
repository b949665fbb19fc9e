"""Say why: what the law asks for and nobody has done or excused.

One loose end for each open subject of a duty, under the key ``say why DUTY/NUMBER``. A job without a rulebook in
force has one of its own: nothing can be proved met while nobody has said by which law.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.judging.model import DutyCoverage, LooseEnd
from witnessmark.judging.scene import Scene

__all__ = ["say_why"]

_DO = {
    "inspect": "Inspect it", "describe": "Describe it", "report": "Record how it stands", "operate": "Operate it",
    "report_def": "Record how it stands", "test": "Test it", "enter": "Enter it", "probe": "Probe it",
    "verify": "Verify it", "advise": "Write the advice as a finding", "state_method": "Record the method used",
}  # fmt: skip


#: Verbs as people say them, where the pack's own word is not one.
_VERBS = {"report_def": "report", "state_method": "state the method"}


def _without_rulebook(scene: Scene) -> LooseEnd:
    named = scene.job.rulebook
    words = (
        f"no rulebook {named} was in force on {scene.date}" if named else "the job names no rulebook to be judged by"
    )
    return LooseEnd(
        sort="say why",
        key="say why rulebook",
        words=f"{words}: no duty can be shown to be met",
        entries=(),
        next="Set the job's rulebook to the law in force at the property on the day of the visit.",
    )


def say_why(scene: Scene, duties: Sequence[DutyCoverage]) -> Iterator[LooseEnd]:
    """The loose ends *say why*, in the rulebook's order."""
    if scene.rulebook is None:
        yield _without_rulebook(scene)
        return
    for row in duties:
        duty = row.duty
        for number, subject in enumerate(row.subjects, 1):
            if subject.status != "open":
                continue
            asked = f" ({row.why})" if row.why.startswith("asked because nothing") else ""
            yield LooseEnd(
                sort="say why",
                key=f"say why {duty.id}/{number}",
                words=f"{duty.section}, {_VERBS.get(duty.verb, duty.verb)}: {subject.words}: {subject.why}{asked}",
                entries=subject.entries,
                next=f"{_DO.get(duty.verb, 'Do it')}, or record that it was not inspected and for which lawful reason.",
                duty=duty.id,
                tag=duty.provenance.tag,
            )
