"""Judging: where a visit stands. What is still on, what is open, which duties are met, what the readings mean."""

from witnessmark.judging.model import (
    BLOCKING,
    ENDS,
    DraftFinding,
    DutyCoverage,
    JudgedReading,
    LooseEnd,
    Running,
    Standing,
    SubjectCoverage,
)
from witnessmark.judging.standing import draft_findings, standing, under_each

__all__ = [
    "BLOCKING", "ENDS", "DraftFinding", "DutyCoverage", "JudgedReading", "LooseEnd", "Running", "Standing",
    "SubjectCoverage", "draft_findings", "standing", "under_each",
]  # fmt: skip
