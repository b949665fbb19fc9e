"""The scenes, grouped by the place where the photo is taken; each function builds one picture."""
