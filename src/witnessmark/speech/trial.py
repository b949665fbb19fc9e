"""Can an engine open a model without ending the program? Tried in a process of its own.

The compiled code of some engines ends the whole process when a model is damaged, instead of saying so. They open it once
in a process that may die; only then here. It costs the time of loading it twice.
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

from witnessmark.problems import Refusal
from witnessmark.speech.messages import MODEL_UNFIT
from witnessmark.speech.recognizer import Model

__all__ = ["try_in_a_process_of_its_own"]

_PROGRAM = """
import json, sys
from pathlib import Path
from witnessmark.problems import Refusal
from witnessmark.speech.engines import ENGINES
from witnessmark.speech.recognizer import Model
row = json.load(sys.stdin)
files = {name: tuple(map(Path, parts)) for name, parts in row["files"].items()}
model = Model(row["name"], row["engine"], files, row["folder"] and Path(row["folder"]), row["digest"])
try:
    ENGINES[model.engine](model, 1, ())
except Refusal:
    pass  # what can be said of it is said where the model is opened for good
print("survived")
"""
#: Seconds after which loading is taken to go on: a large model on a slow disk.
_LONGEST = 300.0


def try_in_a_process_of_its_own(model: Model) -> None:
    """Open a model elsewhere first.

    Raises:
        Refusal: WM652 when the process died over it.
    """
    told = {
        "name": model.name,
        "engine": model.engine,
        "files": {name: [str(part) for part in parts] for name, parts in model.files.items()},
        "folder": None if model.folder is None else str(model.folder),
        "digest": model.digest,
    }
    source = str(Path(__file__).resolve().parents[2])
    program = f"import sys; sys.path.append({source!r})\n{_PROGRAM}"
    try:
        done = subprocess.run(  # noqa: S603 - this very program
            [sys.executable, "-c", program], input=json.dumps(told), capture_output=True, text=True, errors="replace",
            timeout=_LONGEST, check=False,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        return
    if "survived" not in done.stdout:
        lines = [
            line.strip() for line in done.stderr.splitlines() if line.strip() and line.isascii() and line.isprintable()
        ]
        said = f": {lines[-1][:160]}" if lines else ""
        raise Refusal(MODEL_UNFIT.at(model.name, f"{model.engine} ended over it ({done.returncode}){said}"))
