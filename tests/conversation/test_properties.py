"""Whatever people text, in whatever order."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.wording.gsm import is_gsm, segments
from tests.conversation.stage import ANN, BEN, CAL, Stage

USUAL = (
    "12 gal at 2.2", "8 gal", "7", "gal", "taps", "no, 9", "no, 2.4", "undo", "scratch that",
    "ok", "again", "more", "all", "never mind", "20 taps", "put in 6 more", "pulled 50 taps",
    "lit the fire", "fire's out", "boiled 40 gal in 7 hrs", "pan at 216", "water boils at 210.4",
    "drew off 3 quarts", "bottled 6 pints", "$12 for lids", "dumped 5 gal", "sap at 41F in tank",
    "how much so far", "which tree is best", "what does it cost", "is my sap good", "join",
    "add +15550100012", "orwell vt", "tree 1 2 gal, tree 2 3 gal", "45 L", "thanks", "STOP",
    "START", "HELP", "12 gal at 22", "2.2", "that was yesterday",
)  # fmt: skip
words = st.one_of(st.sampled_from(USUAL), st.text(max_size=60))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.sampled_from((ANN, BEN, CAL)), words), max_size=12))
def test_every_reply_is_short_plain_and_never_an_error(texts: list[tuple[str, str]]) -> None:
    stage = Stage()
    for minute, (sender, text) in enumerate(texts):
        reply = stage.text(text, f"2027-03-05T12:{minute * 4:02d}", sender)
        assert is_gsm(reply)
        assert segments(reply) <= 2
        assert "could not work it out" not in reply
    stage.parts.ledger.close()


mine = st.sampled_from(
    ("12 gal at 2.2", "5 gal", "undo", "no, 9 gal", "drew off 1 qt", "7", "gal", "4 taps", "ok")
)
theirs = st.sampled_from((*USUAL, "STOP"))


@settings(max_examples=40, deadline=None)
@given(st.lists(mine, min_size=1, max_size=6), st.lists(theirs, max_size=6), st.randoms())
def test_what_a_stranger_texts_changes_nothing_of_mine(
    my_texts: list[str], their_texts: list[str], chance: object
) -> None:
    """The same texts of mine, alone and among a stranger's, get the same replies."""
    alone, among = Stage(), Stage()
    expected = [
        alone.text(text, f"2027-03-05T12:{minute * 5:02d}") for minute, text in enumerate(my_texts)
    ]
    shuffled = [(True, text) for text in my_texts]
    for text in their_texts:
        at = chance.randint(0, len(shuffled))  # type: ignore[attr-defined]
        shuffled.insert(at, (False, text.replace("add +15550100012", "hello")))
    replies, minute = [], 0
    for is_mine, text in shuffled:
        if is_mine:
            replies.append(among.text(text, f"2027-03-05T12:{minute * 5:02d}"))
            minute += 1
        else:
            among.text(text, f"2027-03-05T12:{minute * 5:02d}", CAL)
    assert replies == expected
    assert alone.totals() == among.totals()
    for stage in (alone, among):
        stage.parts.ledger.close()


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.sampled_from(("12 gal at 2.2", "5 gal", "3 taps", "drew off 1 qt")), max_size=4),
    st.sampled_from(
        ("9 gal at 2", "tree 1 2 gal, tree 2 3 gal", "bottled 6 pints", "$12 for lids",
         "boiled 40 gal in 7 hrs", "dumped 5 gal", "we have 30 taps", "pulled all the taps")
    ),
)  # fmt: skip
def test_undo_restores_the_totals(before: list[str], text: str) -> None:
    stage = Stage()
    for hour, earlier in enumerate(before):
        stage.text(earlier, f"2027-03-04T{8 + hour:02d}:00")
    stage.text("hi", "2027-03-05T11:00")
    totals = stage.totals()
    stage.text(text, "2027-03-05T12:00")
    assert stage.totals() != totals or text == "pulled all the taps"
    stage.text("undo", "2027-03-05T12:01")
    assert stage.totals() == totals
    stage.parts.ledger.close()
