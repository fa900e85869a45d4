"""A text that would be too long leaves out what matters least."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from bot.wording.compose import Part, fit, sentence
from bot.wording.gsm import segments

LONG = "x" * 100


def test_all_of_it_is_said_where_it_fits() -> None:
    assert fit([Part("One."), Part("Two.", 3)], 1) == "One. Two."


def test_the_sparest_goes_first() -> None:
    assert fit([Part(LONG), Part("a" * 70, 1), Part("b" * 70, 2)], 1) == LONG
    assert fit([Part(LONG), Part("a" * 50, 1), Part("b" * 70, 2)], 1) == f"{LONG} {'a' * 50}"


def test_a_shorter_word_is_tried_before_it_goes() -> None:
    assert fit([Part(LONG), Part("a" * 70, 1, "short")], 1) == f"{LONG} short"
    assert fit([Part(LONG * 2), Part("a" * 70, 1, "short")], 1) == LONG * 2


def test_a_shorter_word_that_stays_never_goes() -> None:
    parts = [Part(LONG * 2), Part("a" * 70, 1, "STOP ends.", stays=True)]
    assert fit(parts, 1).endswith("STOP ends.")


def test_what_may_not_be_spared_is_said_however_long() -> None:
    assert fit([Part(LONG * 2)], 1) == LONG * 2


def test_nothing_is_nothing() -> None:
    assert fit([], 1) == ""
    assert fit([Part("")], 1) == ""


parts = st.lists(
    st.builds(Part, st.text("ab ", min_size=1, max_size=120), st.integers(1, 4)), max_size=8
)


@given(parts)
def test_what_can_be_spared_always_fits(some: list[Part]) -> None:
    assert segments(fit(some, 1)) <= 1


def test_a_sentence_has_a_capital_and_an_end() -> None:
    assert sentence("12 gal, tue") == "12 gal, tue."
    assert sentence("undone: 5 gal") == "Undone: 5 gal."
    assert sentence("which?") == "Which?"
    assert sentence("") == ""
