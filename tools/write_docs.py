"""Write the generated pages under docs/; ``make docs``."""

from __future__ import annotations

from pathlib import Path

from generated_pages import pages

DOCS = Path(__file__).resolve().parents[1] / "docs"


def main() -> None:
    """Write every page whose text has changed."""
    for name, text in pages().items():
        path = DOCS / name
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
            print(f"wrote docs/{name}")


if __name__ == "__main__":
    main()
