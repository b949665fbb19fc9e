"""Imaging: what is this picture, when was it taken, which temperatures does this frame hold, and how is it shown?

Reads and draws only; nothing here decides what a picture means.
"""

from witnessmark.imaging.describe import describe
from witnessmark.imaging.formats import HEIF
from witnessmark.imaging.frame import Frame, Spot, read_frame
from witnessmark.imaging.frame_picture import frame_picture
from witnessmark.imaging.heif import heif_jpeg
from witnessmark.imaging.palette import COLOURS, colour
from witnessmark.imaging.picture import Picture, read_picture
from witnessmark.imaging.prepared import prepared

__all__ = [
    "COLOURS", "HEIF", "Frame", "Picture", "Spot", "colour", "describe", "frame_picture", "heif_jpeg", "prepared", "read_frame", "read_picture",
]  # fmt: skip
