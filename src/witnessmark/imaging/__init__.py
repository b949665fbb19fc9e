"""Imaging: what is this picture, when was it taken, which temperatures does this frame hold, and how is it shown?

Reads and draws only; nothing here decides what a picture means.
"""

from witnessmark.imaging.describe import describe
from witnessmark.imaging.frame import Frame, Spot, read_frame
from witnessmark.imaging.frame_picture import frame_picture
from witnessmark.imaging.palette import COLOURS, colour
from witnessmark.imaging.picture import Picture, read_picture
from witnessmark.imaging.prepared import prepared

__all__ = [
    "COLOURS", "Frame", "Picture", "Spot", "colour", "describe", "frame_picture", "prepared", "read_frame", "read_picture",
]  # fmt: skip
