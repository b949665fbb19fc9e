"""What kind of file is this, by its first bytes? The ending of its name is never asked."""

from __future__ import annotations

__all__ = ["HEAD", "HEIF", "PICTURES", "mime_of"]

#: How many bytes of the beginning are enough.
HEAD = 4096

#: Stands for the family of still pictures that Pillow cannot decode by itself.
HEIF = "image/heic"

#: The name that Pillow has for the decoder of each still picture.
PICTURES = {"image/jpeg": "JPEG", "image/png": "PNG", "image/webp": "WEBP", "image/tiff": "TIFF"}

_FIRST = (
    (b"\xff\xd8\xff", "image/jpeg"),
    (b"\x89PNG\r\n\x1a\n", "image/png"),
    (b"II*\x00", "image/tiff"),
    (b"MM\x00*", "image/tiff"),
    (b"%PDF-", "application/pdf"),
)
_STILL = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1", b"avif", b"avis"}
_EBML = b"\x1aE\xdf\xa3"


def mime_of(head: bytes) -> str | None:
    r"""The media type that the first bytes of a file show, None when it is none of those known here.

    Sources: the signatures of ISO/IEC 10918-1 (JPEG), the PNG specification (W3C, section 5.2), RFC 9649 (WebP),
    TIFF 6.0 (section 2), ISO/IEC 14496-12 (``ftyp`` of MP4, MOV and HEIF), RFC 8794 (EBML), ISO 32000 (PDF).

    >>> mime_of(b"RIFF\x10\x00\x00\x00WEBPVP8 "), mime_of(b"GIF89a")
    ('image/webp', None)
    """
    for first, mime in _FIRST:
        if head.startswith(first):
            return mime
    if head[:4] == b"RIFF" and head[8:12] == b"WEBP":
        return "image/webp"
    if head[4:8] == b"ftyp":
        brand = head[8:12]
        if brand in _STILL:
            return HEIF
        return "video/quicktime" if brand == b"qt  " else "video/mp4"
    if head.startswith(_EBML) and b"webm" in head[:64]:
        return "video/webm"
    return None
