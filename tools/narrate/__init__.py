"""Written walk-throughs into timed captions with the records expected of them."""
