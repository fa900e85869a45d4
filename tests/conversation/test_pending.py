"""An open question survives its storage."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.conversation.pending import Question, WhereAsked, WhichRecord, from_json, to_json
from bot.reading import Choice, Doubt

words = st.text(max_size=20)
questions: st.SearchStrategy[Question] = st.one_of(
    st.just(WhereAsked()),
    st.builds(
        Doubt,
        words,
        st.lists(st.builds(Choice, st.lists(words, max_size=3).map(tuple), words), max_size=3).map(
            tuple
        ),
        st.none() | words,
        st.booleans(),
    ),
    st.builds(
        WhichRecord,
        st.lists(st.tuples(st.lists(words, max_size=3).map(tuple), st.integers(1)), max_size=3).map(
            tuple
        ),
        st.dictionaries(words, st.floats(allow_nan=False) | words, max_size=3),
    ),
)


@given(questions)
def test_a_question_comes_back_from_json_as_it_was(question: Question) -> None:
    assert from_json(json.loads(json.dumps(to_json(question)))) == question


def test_an_unknown_sort_is_refused() -> None:
    with pytest.raises(ValueError, match="'riddle'"):
        from_json({"sort": "riddle"})


def test_the_record_that_an_answer_names() -> None:
    which = WhichRecord(((("tree 1", "1"), 11), (("tree 2", "2"), 12)), {"kind": "amend"})
    assert which.chosen("Tree 2.") == 12
    assert which.chosen("tree 3") is None
