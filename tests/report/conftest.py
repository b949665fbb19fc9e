"""What several tests of the report share: the demo's job, issued, built once by the command a user would give."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def demo_job(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the issued demo job. Tests leave it as it is and change copies."""
    folder = tmp_path_factory.mktemp("issued") / "job"
    command = [sys.executable, "-m", "witnessmark", "demo", str(folder), "--json"]
    result = subprocess.run(command, capture_output=True, text=True, check=False)
    assert result.returncode == 0, result.stderr
    return folder
