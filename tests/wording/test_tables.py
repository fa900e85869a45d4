"""Tables as lines of plain text, and found again in a mail's words."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.wording import tables

_CELLS = st.text(st.characters(codec="ascii", exclude_categories=["Cc"]), max_size=12)


def test_cells_stand_in_columns_below_their_headings() -> None:
    made = tables.lines(("Tree", "Sap"), [("7", "4.5 gal"), ("big one", "1 gal")])
    assert made == "Tree    | Sap\n7       | 4.5 gal\nbig one | 1 gal"


def test_no_rows_are_no_table() -> None:
    assert tables.lines(("Tree", "Sap"), []) == ""


@given(st.lists(st.tuples(_CELLS, _CELLS, _CELLS), min_size=1, max_size=5))
def test_a_table_is_found_again_between_the_words(rows: list[tuple[str, str, str]]) -> None:
    made = tables.lines(("One", "Two", "Three"), rows)
    found = tables.blocks(f"Said before.\n\nAnd this.\n\n{made}\n\nSaid after.")
    shown = [tuple(cell.replace("|", "/").strip() for cell in row) for row in rows]
    assert found == ["Said before.\n\nAnd this.", [("One", "Two", "Three"), *shown], "Said after."]


def test_words_without_a_table_stay_as_they_are() -> None:
    for said in ("12 gal.", "12 gal | or 12 taps?", "one | two\nthree", "a\n\nb\nc"):
        assert tables.blocks(said) == [said]
