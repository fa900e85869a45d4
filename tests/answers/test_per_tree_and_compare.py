"""Tree by tree, lot by lot, and season against season."""

from __future__ import annotations

from tests.conversation.stage import Stage


def _bush() -> Stage:
    stage = Stage()
    stage.settled()
    stage.text("tree 1 2 gal at 2.0, tree 2 3 gal at 2.6, tree 3 1 gal", "2027-03-01T17:00")
    stage.text("tree 1 2.5 gal at 2.0", "2027-03-07T17:00")
    return stage


def test_the_tree_that_gives_most() -> None:
    assert _bush().text("best tree?", "2027-03-07T18:00").startswith("Tree 1 gives most, 4.5 gal")


def test_the_sweetest_tree() -> None:
    assert "Tree 2 is sweetest, 2.6" in _bush().text("sweetest tree?", "2027-03-07T18:00")


def test_the_poorest_tree() -> None:
    assert "Tree 3 gave least, 1 gal" in _bush().text("poorest tree", "2027-03-07T18:00")


def test_trees_that_were_not_emptied_while_others_were() -> None:
    reply = _bush().text("which trees havent i emptied lately", "2027-03-07T18:00")
    assert "tree 2" in reply
    assert "tree 3" in reply
    assert "tree 1" not in reply


def test_one_tree_by_its_name() -> None:
    reply = _bush().text("how is tree 2 doing", "2027-03-07T18:00")
    assert "Tree 2: 3 gal this season at 2.6 Brix, number 2 of 3" in reply


def test_one_tree_that_was_never_heard_of_is_not_made_up() -> None:
    assert "tree 9" not in _bush().text("how is tree 9 doing", "2027-03-07T18:00").casefold()


def test_a_season_to_the_same_day_with_its_syrup() -> None:
    stage = Stage()
    stage.settled()
    stage.text("30 gal at 2", "2026-03-02T17:00")
    stage.text("drew off 2 qt", "2026-03-02T18:00")
    stage.text("50 gal at 2", "2026-03-20T17:00")
    stage.text("40 gal at 2", "2027-03-02T17:00")
    stage.text("drew off 3 qt", "2027-03-02T18:00")
    reply = stage.text("are we ahead of last year", "2027-03-05T18:00")
    assert "10 gal ahead of last season: 40 gal of sap now, 30 gal by Mar 5" in reply
    assert "Syrup 3 qt now, 2 qt then" in reply
    assert "80 gal" in reply


def test_a_season_that_is_named_by_its_year() -> None:
    stage = Stage()
    stage.settled()
    stage.text("30 gal at 2", "2025-03-02T17:00")
    stage.text("40 gal at 2", "2027-03-02T17:00")
    reply = stage.text("how are we doing compared to 2025", "2027-03-05T18:00")
    assert "10 gal ahead of season 2025" in reply


def test_what_a_tap_has_given_one_with_another() -> None:
    stage = Stage()
    stage.settled()
    stage.text("set 20 taps", "2027-02-28T17:00")
    stage.text("30 gal at 2", "2027-03-02T17:00")
    stage.text("20 gal at 2", "2027-03-09T17:00")
    for question in ("sap per tap so far", "how much am I getting per tap", "average per tap?"):
        reply = stage.text(question, "2027-03-10T18:00")
        assert "2.5 gal of sap a tap so far (20 in)" in reply, question


def test_how_big_a_pail_each_tap_wants_is_no_question_of_what_it_gave() -> None:
    stage = Stage()
    stage.settled()
    stage.text("set 20 taps", "2027-02-28T17:00")
    stage.text("30 gal at 2", "2027-03-02T17:00")
    assert "so far" not in stage.text("how big a bucket per tap", "2027-03-10T18:00")


def test_what_each_week_gave_from_its_monday_on() -> None:
    stage = Stage()
    stage.settled()
    stage.text("30 gal at 2", "2027-03-02T17:00")
    stage.text("20 gal at 2", "2027-03-09T17:00")
    stage.text("drew off 2 qt", "2027-03-14T17:00")
    reply = stage.text("how much each week", "2027-03-14T18:00")
    assert reply == "Weeks from Mar 1 30 gal; Mar 8 20 gal and 2 qt syrup."


def test_what_each_day_gave() -> None:
    stage = Stage()
    stage.settled()
    stage.text("30 gal at 2", "2027-03-02T17:00")
    stage.text("20 gal at 2", "2027-03-09T17:00")
    assert stage.text("sap by day", "2027-03-09T18:00") == "Mar 2 30 gal; Tue 20 gal."


def test_the_ratio_of_sap_to_syrup() -> None:
    stage = Stage()
    stage.settled()
    stage.text("80 gal at 2", "2027-03-02T17:00")
    assert "No syrup drawn yet" in stage.text("what ratio am i getting", "2027-03-02T18:00")
    stage.text("drew off 2 gal", "2027-03-03T17:00")
    assert "40 to 1" in stage.text("what ratio am i getting", "2027-03-03T18:00")
