"""A form of words is only looked for where one of its signs stands: whatever it finds has one."""

from __future__ import annotations

import importlib
import pkgutil
import re
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import bot.reading
from bot.reading import two_ways
from bot.reading.rewrites import Rewrites
from bot.reading.signs import Index, Sought, either


def _forms() -> Iterator[tuple[str, tuple[str, ...], re.Pattern[str]]]:
    """Every form that is looked for by its signs, and where it stands in the code."""
    for module_info in pkgutil.walk_packages(bot.reading.__path__, "bot.reading."):
        module = importlib.import_module(module_info.name)
        for name, value in vars(module).items():
            where = f"{module_info.name.removeprefix('bot.reading.')}.{name}"
            if isinstance(value, Sought):
                yield where, value.signs, value.form
            elif isinstance(value, Rewrites) and name == "_REWRITES":
                for row, (signs, form, _) in enumerate(value.table):
                    yield f"{where}.{row}", signs, form
    for row, (signs, form, _) in enumerate(two_ways.FORMS):
        yield f"two_ways.{row}", signs, form


_FORMS = {where: (signs, form) for where, signs, form in _forms()}


def test_the_forms_of_all_stages_are_tried() -> None:
    told = {where.split(".")[0] for where in _FORMS}
    assert {"tidy", "in_passing", "plain_deeds", "two_ways", "kinds", "own_deeds"} <= told


@pytest.mark.parametrize("where", _FORMS)
def test_whatever_a_form_finds_has_one_of_its_signs(where: str) -> None:
    signs, form = _FORMS[where]

    @settings(max_examples=20, derandomize=True, database=None, deadline=None,
              suppress_health_check=list(HealthCheck))  # fmt: skip
    @given(st.from_regex(form, alphabet=st.characters(codec="ascii")))
    def has_one(text: str) -> None:
        plain = text.lower()
        if form.search(plain) is not None:
            assert any(sign in plain for sign in signs), (plain, signs)

    has_one()


_TABLE = (("a", "ab"), ("b",), ("abs", "s a"), (" ", "sss"), ("ab", "s"))
_INDEX = Index(_TABLE)


@given(st.text("abs ", max_size=30))
def test_an_index_finds_the_rows_whose_signs_stand_in_a_text(text: str) -> None:
    expected = [n for n, signs in enumerate(_TABLE) if any(sign in text for sign in signs)]
    assert _INDEX.rows(text) == expected


_WORDS = st.lists(st.text("abs ", min_size=1, max_size=4), min_size=1, max_size=8)


@given(_WORDS, st.text("abs ", max_size=30))
def test_either_finds_what_one_of_its_signs_finds(signs: list[str], text: str) -> None:
    found = re.search(either(signs), text)
    assert (found is not None) == any(sign in text for sign in signs)


def test_either_takes_the_longest_of_those_that_begin_alike() -> None:
    found = re.search(either(["gal", "gallon", "gallons"]), "12 gallons")
    assert found is not None
    assert found[0] == "gallons"
