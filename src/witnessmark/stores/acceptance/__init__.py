"""What must every store do, whatever it is made of? One suite, for the stores here and for others to come.

Each check is a function that takes an *opener* and raises ``AssertionError`` with what was expected. An opener gives a
store on one and the same place every time it is called, and the place is empty at first::

    @pytest.mark.parametrize("check", JOURNAL_CHECKS)
    def test_my_store(check, tmp_path):
        check(lambda: MyStore(tmp_path / "somewhere"))
"""

from witnessmark.stores.acceptance.journals import JOURNAL_CHECKS, JournalOpener
from witnessmark.stores.acceptance.media import MEDIA_CHECKS, MediaOpener
from witnessmark.stores.acceptance.samples import sample_entries, sample_pen

__all__ = ["JOURNAL_CHECKS", "MEDIA_CHECKS", "JournalOpener", "MediaOpener", "sample_entries", "sample_pen"]
