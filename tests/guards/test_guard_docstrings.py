"""The docstring law: what measures or converts shows an example that runs, and its module names what it rests on."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[2] / "src" / "witnessmark"
#: Packages whose public functions deal in measured values.
MEASURING = ("units", "gauges")


def public_functions(tree: ast.Module) -> list[ast.FunctionDef]:
    exported: set[str] = set()
    for node in tree.body:
        if isinstance(node, ast.Assign) and any(isinstance(t, ast.Name) and t.id == "__all__" for t in node.targets):
            exported = set(ast.literal_eval(node.value))
    return [node for node in tree.body if isinstance(node, ast.FunctionDef) and node.name in exported]


def breaches(text: str, name: str) -> list[str]:
    tree = ast.parse(text)
    functions = public_functions(tree)
    if not functions:
        return []
    found = [] if ast.get_docstring(tree) else [f"{name} does not say which question it answers"]
    for function in functions:
        doc = ast.get_docstring(function) or ""
        if ">>>" not in doc:
            found.append(f"{name}: {function.name} shows no example")
        words = doc.split(">>>")[0].split()
        if len(words) < 6:
            found.append(f"{name}: {function.name} does not say what it takes and gives")
    return found


def test_functions_that_measure_are_explained_and_shown() -> None:
    files = [file for package in MEASURING for file in sorted((PACKAGE / package).rglob("*.py"))]
    assert len(files) >= 5
    assert [b for file in files for b in breaches(file.read_text(encoding="utf-8"), file.name)] == []


@pytest.mark.parametrize(
    "text",
    [
        '"""What?"""\n__all__ = ["f"]\ndef f(x: int) -> int:\n    """Give x in some unit or other, exactly."""\n',
        '__all__ = ["f"]\ndef f(x: int) -> int:\n    """Short.\n\n    >>> f(1)\n    1\n    """\n',
    ],
)
def test_the_guard_bites(text: str) -> None:
    assert breaches(text, "planted")
