"""The shipped packs, for tests of what they say."""

from __future__ import annotations

import pytest

from witnessmark.packs import read
from witnessmark.packs.model import Packs, Translation


@pytest.fixture(name="packs", scope="module")
def _packs() -> Packs:
    return read()


@pytest.fixture(name="spanish", scope="module")
def _spanish(packs: Packs) -> dict[tuple[str, str], Translation]:
    return {(row.table, row.of): row for row in packs.translations.values() if row.language == "es"}
