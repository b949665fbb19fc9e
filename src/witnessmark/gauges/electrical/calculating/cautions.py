"""What is said with every electrical calculation."""

from __future__ import annotations

__all__ = ["INFORMATIONAL", "WORK_ON_IT"]

INFORMATIONAL = (
    "Informational only: some state laws (in Texas 22 TAC 535.229) expressly do not ask an inspector to judge service "
    "capacity or voltage drop."
)
WORK_ON_IT = (
    "Live parts kill: conductors and lugs behind a dead front are looked at only by those trained for it. What to "
    "change is for a licensed electrician and the local authority."
)
