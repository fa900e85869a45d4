"""Every kind of reading keeps to the form of the family."""

from __future__ import annotations

from itertools import chain

import pytest

from bot.reading import kinds, lexicon

_SORTS = frozenset(
    "volume brix temp length hours cords mass money number date clock tree trees lot phone email "
    "postal vessels word sign".split()
)
_TAGS = frozenset(chain.from_iterable(lexicon.TAGS.values()))
_WITH_NEEDS = [module for module in kinds.FAMILY if hasattr(module, "NEEDS")]


@pytest.mark.parametrize("module", _WITH_NEEDS, ids=lambda module: module.__name__)
def test_what_a_kind_needs_is_a_sort_of_item_or_a_tag_of_our_words(module: object) -> None:
    assert set(module.NEEDS) <= _SORTS | _TAGS  # type: ignore[attr-defined]


@pytest.mark.parametrize("module", kinds.FAMILY, ids=lambda module: module.__name__)
def test_a_kind_has_one_reading_and_says_what_it_is(module: object) -> None:
    own = [cls for cls in kinds.KINDS if cls.__module__ == module.__name__]  # type: ignore[attr-defined]
    assert len(own) == 1
    assert own[0].kind
    assert module.__doc__
