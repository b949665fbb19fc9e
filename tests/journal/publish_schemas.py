"""Writes ``docs/schema`` anew from the code: ``python tests/journal/publish_schemas.py``."""

from pathlib import Path

from witnessmark.journal.schema import schema_files

if __name__ == "__main__":
    folder = Path(__file__).resolve().parents[2] / "docs" / "schema"
    for name, data in schema_files().items():
        (folder / name).write_bytes(data)
