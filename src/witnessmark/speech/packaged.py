"""Speech models that installed packages may hold, known by the SHA-256 of every file.

docs/decisions/011-speech-models.md says where they come from, under which licence, and how the hashes were checked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

__all__ = ["PACKAGED", "PackagedModel"]


@dataclass(frozen=True, slots=True)
class PackagedModel:
    """A model by its files: name of each file, and the SHA-256 of its parts in order (one part where it is whole)."""

    name: str
    engine: str
    files: Mapping[str, tuple[str, ...]]

    def rare(self) -> Iterator[str]:
        """The hashes of the weights: no two models share them."""
        yield from self.files["model.bin"]


#: The one with the better drafts first (measured in docs/speech.md).
PACKAGED = (
    PackagedModel(
        "whisper-tiny.en",
        "faster-whisper",
        {
            "model.bin": ("1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a",),
            "config.json": ("14b1b421a90349bc551b881461426b561a874049cb9e4c4864f2ca384f6a7cc5",),
            "tokenizer.json": ("929c5252409436dce1b38a75d1abbcb5e132d170d8e324e4e04ed915fa2d22df",),
            "vocabulary.txt": ("ff77588746d3a2595d32ab5b69ffd7b95ce2441ac57533cb66fc3eb575a115cf",),
        },
    ),
    PackagedModel(
        "whisper-base",
        "faster-whisper",
        {
            "model.bin": (
                "221b8a89445469c663df6b7f63f9e86e9dc82e72d91f9f43c4f9ca651ff8ac54",
                "c8f550bdda12140f5b56ef25cfa0b1f613a9814d058e438e4d2fdc1986aa1408",
            ),
            "config.json": ("56a6d8110d311f19c8f0471e562832c7527f146b567275bfca59fcf7c184da9a",),
            "tokenizer.json": ("fb7b63191e9bb045082c79fd742a3106a12c99513ab30df4a0d47fa6cb6fd0ab",),
            "vocabulary.txt": ("34ce3fe1c5041027b3f8d42912270993f986dbc4bb34cf27f951e34a1e453913",),
        },
    ),
)
