"""Draws the invented pictures of the demo visit: one scene a photo, one solved heat problem a thermal frame.

Development-time only. See ``README.md`` beside this file for how to run it.
"""
