"""How Pailtext talks: word for word where it matters."""

from __future__ import annotations

import pytest

from bot.wording.gsm import segments
from tests.conversation.stage import ANN, BEN, Stage


@pytest.fixture
def stage() -> Stage:
    """Somebody in Lowville, New York, who has been met."""
    met = Stage()
    met.settled()
    return met


def test_a_receipt_says_what_was_understood_then_where_they_stand(stage: Stage) -> None:
    stage.text("45.5 gal at 2.1", "2027-03-01T18:00")
    stage.text("nothing today", "2027-03-02T18:00")
    assert stage.text("12 gal at 2.2", "2027-03-02T18:30") == (
        "12 gal at 2.2, Tue. Season 57.5 gal, about 1.4 gal syrup."
        " Keep it under 38F and boil by Thu."
    )


def test_a_hint_is_said_once_a_day(stage: Stage) -> None:
    said = [
        stage.text("5 gal at 2", at)
        for at in ("2027-03-01T08:00", "2027-03-01T12:00", "2027-03-02T08:00")
    ]
    assert ["Keep it" in reply for reply in said] == [True, False, True]


def test_no_hint_to_keep_cold_while_the_sap_is_boiled(stage: Stage) -> None:
    stage.text("lit the fire", "2027-03-01T08:00")
    assert "Keep it" not in stage.text("5 gal at 2", "2027-03-01T12:00")


def test_undo_says_what_was_undone(stage: Stage) -> None:
    stage.text("45.5 gal at 2.2")
    stage.text("12 gal", "2027-03-05T18:30")
    assert stage.text("scratch that", "2027-03-05T18:31") == (
        "Undone: 12 gal, Fri. Season 45.5 gal, about 1.2 gal syrup."
    )


def test_the_same_words_are_asked_about_in_one_line(stage: Stage) -> None:
    stage.text("12 gal at 2.2")
    assert stage.text("12 gal at 2.2", "2027-03-05T18:03") == (
        "12 gal at 2.2 again? Text again to count it twice, or ok to leave it."
    )


def test_the_same_sap_after_half_an_hour_counts(stage: Stage) -> None:
    stage.text("12 gal at 2.2")
    stage.text("12 gal at 2.2", "2027-03-05T18:31")
    assert stage.totals()["sap_gallons"] == 24


def test_the_same_draw_after_ten_minutes_counts(stage: Stage) -> None:
    stage.text("drew off 2 qt")
    stage.text("drew off 2 qt", "2027-03-05T18:11")
    assert stage.totals()["syrup_gallons"] == 1


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("ridge 9 gal", "9 gal from the ridge"),
        ("80 L yesterday, forgot to log", "80 L yesterday"),
        ("made 1 pint of syrup!!", "i got one pint of syrup"),
        ("$12 on lids", "spent 12 dollars on lids"),
    ],
)
def test_the_same_thing_in_other_words_is_asked_about(
    stage: Stage, first: str, second: str
) -> None:
    stage.text(first)
    before = stage.totals()
    assert "again?" in stage.text(second, "2027-03-05T18:04")
    stage.text("ok", "2027-03-05T18:05")
    assert stage.totals() == before


def test_one_more_of_the_same_counts(stage: Stage) -> None:
    stage.text("8 gal")
    stage.text("another 8 gal", "2027-03-05T18:04")
    assert stage.totals()["sap_gallons"] == 16


def test_the_same_thing_told_by_a_helper_is_asked_about(stage: Stage) -> None:
    stage.text(f"add {BEN}")
    stage.text("join", sender=BEN)
    stage.text("drew off 2 qt")
    assert "logged 2 qt of syrup that day too" in stage.text("drew off 2 quarts", sender=BEN)
    stage.text("same", sender=BEN)
    assert stage.totals()["syrup_gallons"] == 0.5


@pytest.mark.parametrize(
    "words", ["30 taps", "my buckets hold 2 gal", "water boils at 210.4", "how much so far"]
)
def test_the_same_words_are_not_asked_about_where_twice_is_once(stage: Stage, words: str) -> None:
    stage.text(words)
    assert "again?" not in stage.text(words, "2027-03-05T18:01")


def test_taps_put_in_as_many_again_could_be_a_restatement(stage: Stage) -> None:
    stage.text("put in 14 taps", "2027-02-20T18:00")
    assert stage.text("put in 14 taps", "2027-02-21T18:00") == (
        "14 more, so 28 taps in all, or 14 in all? Text more or all."
    )
    stage.text("all", "2027-02-21T18:01")
    assert stage.totals()["taps"] == 14
    stage.text("put in 14 taps", "2027-02-22T18:00")
    stage.text("more", "2027-02-22T18:01")
    assert stage.totals()["taps"] == 28


def test_a_picture_without_words_is_answered_politely(stage: Stage) -> None:
    assert stage.text("", media=1).startswith("I can't see pictures")


def test_an_empty_text_is_answered_too(stage: Stage) -> None:
    assert stage.text("  \n").startswith("That text was empty")


@pytest.mark.parametrize("word", ["STOP", "START", "HELP"])
def test_what_the_provider_answered_itself_is_not_answered_twice(stage: Stage, word: str) -> None:
    assert stage.text(word, opt_out=word) == ""


def test_a_stop_that_only_the_provider_saw_silences(stage: Stage) -> None:
    stage.text("arret", opt_out="STOP")
    assert stage.text("12 gal at 2.2") == ""
    assert stage.totals()["sap_gallons"] == 12


def test_a_silenced_first_text_is_silent() -> None:
    assert Stage().text("STOP") == ""


def test_consent_is_logged_with_how_it_came(stage: Stage) -> None:
    stage.text("stop")
    stage.text("start", "2027-03-06T18:00")
    with stage.parts.ledger.reading() as book:
        who = book.people.find(ANN)
        assert who is not None
        assert book.consents.last(who.person_id) == "start"


def test_everything_at_first_contact_fits_and_names_the_carrier_line() -> None:
    for words in ("hi", "12 gal at 2.2", "9", "how much so far", "20 taps, 2 gal buckets", "HELP"):
        reply = Stage().text(words)
        assert "STOP ends." in reply
        assert segments(reply) == 1, reply


def test_a_very_long_text_is_answered_shortly(stage: Stage) -> None:
    assert segments(stage.text("12 gal at 2.2 and " * 600)) <= 2


def test_the_day_is_that_of_the_trees_not_of_utc() -> None:
    stage = Stage()
    stage.text("I'm in 54837", "2027-03-01T12:00")
    assert "Tue" in stage.text("5 gal at 2", "2027-03-02T23:50")


def test_a_fire_through_the_change_of_clocks_burns_by_the_wall(stage: Stage) -> None:
    stage.text("lit the fire", "2027-03-13T20:00")
    assert "8 h" in stage.text("fire's out", "2027-03-14T04:00")


def test_a_town_misspelt_is_offered_and_ok_takes_it() -> None:
    stage = Stage()
    stage.text("hello")
    assert stage.text("orwel vt", "2027-03-05T18:01") == (
        "Do you mean Orwell VT? Text ok, or a ZIP or postal code."
    )
    assert stage.text("ok", "2027-03-05T18:02").startswith("Orwell VT.")


def test_a_bush_that_moves_gets_the_law_of_its_new_place(stage: Stage) -> None:
    assert "66 Brix" in stage.text("how much syrup will 100 gal at 2 make")
    stage.text("I'm in 05760", "2027-03-06T18:00")
    assert "66.9 Brix" in stage.text(
        "if i get 100 gal at 2 how much syrup is that", "2027-03-06T18:01"
    )


def test_undoing_the_place_asks_for_it_again(stage: Stage) -> None:
    stage.text("undo", "2027-02-20T12:02")
    assert "Where are your trees" in stage.text("5 gal", "2027-02-21T12:03")


def test_one_who_is_invited_is_told_so_at_first_contact(stage: Stage) -> None:
    stage.text("add +15550100012")
    assert f"{ANN} asks you in: text join" in stage.text("hi", sender=BEN)


def test_an_owner_cannot_invite_themselves_or_a_member_again(stage: Stage) -> None:
    assert stage.text(f"add {ANN}").startswith("That is your own number")
    stage.text("add +15550100012", "2027-03-05T18:01")
    stage.text("join", "2027-03-05T18:02", BEN)
    assert "already" in stage.text("add +15550100012", "2027-03-05T18:03")


def test_a_joined_helper_is_not_put_out_by_undo(stage: Stage) -> None:
    stage.text("5 gal at 2")
    stage.text("add +15550100012", "2027-03-05T18:01")
    stage.text("join", "2027-03-05T18:02", BEN)
    assert stage.text("undo", "2027-03-05T18:03").startswith("Undone: 5 gal")
    stage.text("4 gal", "2027-03-05T18:04", BEN)
    assert stage.totals()["sap_gallons"] == 4


def test_the_owner_is_asked_where_the_trees_are_and_the_helper_is_not() -> None:
    stage = Stage()
    stage.text("add +15550100012")
    stage.text("join", "2027-03-05T18:02", BEN)
    assert "Where are your trees" not in stage.text("4 gal", "2027-03-06T18:04", BEN)


def test_an_amended_jar_count_keeps_its_size(stage: Stage) -> None:
    stage.text("bottled 6 pints")
    stage.text("no, 5", "2027-03-05T18:01")
    assert stage.totals()["jars_gallons"] == pytest.approx(0.625)


def test_a_correction_of_what_was_only_asked_about_touches_no_older_record(stage: Stage) -> None:
    stage.text("10 gal")
    stage.text("7", "2027-03-05T18:01")
    assert stage.text("no, that should be 4", "2027-03-05T18:02").startswith("4 what:")
    stage.text("gal", "2027-03-05T18:03")
    assert stage.totals()["sap_gallons"] == 14


def test_jars_do_not_become_gallons(stage: Stage) -> None:
    stage.text("bottled 6 pints")
    assert "can't tell" in stage.text("no, 31 gal", "2027-03-05T18:01")
    assert stage.totals()["jars_gallons"] == pytest.approx(0.75)


def test_a_correction_reaches_past_a_record_that_it_cannot_mean(stage: Stage) -> None:
    stage.text("13 gal")
    stage.text("$9 for lids", "2027-03-05T18:01")
    assert stage.text("no, 18 gal", "2027-03-05T18:02").startswith("Changed to 18 gal")


def test_a_correction_does_not_reach_back_for_days(stage: Stage) -> None:
    stage.text("13 gal", "2027-03-01T18:00")
    stage.text("$9 for lids", "2027-03-05T18:01")
    stage.text("no, 18 gal", "2027-03-05T18:02")
    assert stage.totals()["sap_gallons"] == 13


def test_a_long_answer_to_somebody_new_leaves_room_for_the_first_words() -> None:
    stage = Stage()
    first = stage.text("settle", "2027-03-05T12:00")
    assert segments(first) <= 2
    assert first.startswith("Sugar sand")
    assert "STOP ends" in first
    rest = stage.text("more", "2027-03-05T12:01")
    assert rest.startswith("Without felt: let jars settle")
