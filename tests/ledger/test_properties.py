"""Whatever is written, amended and undone, in any order: undo restores, strangers stay apart."""

from __future__ import annotations

from collections import defaultdict

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.ledger import IN_MEMORY, Ledger
from tests.ledger.desk import ANN, BEN, CAL, Desk, sap

gallons = st.integers(1, 400).map(lambda eighths: eighths / 8)
steps = st.lists(
    st.tuples(
        st.sampled_from((ANN, BEN, CAL)),
        st.one_of(
            st.tuples(st.just("write"), gallons),
            st.tuples(st.just("amend"), gallons),
            st.tuples(st.just("undo"), st.just(0.0)),
        ),
    ),
    max_size=25,
)


@settings(max_examples=60, deadline=None)
@given(steps)
def test_undo_restores_and_strangers_never_mix(acts: list[tuple[str, tuple[str, float]]]) -> None:
    """Against a plain model: for each person a stack of versions of each of their texts."""
    desk = Desk(Ledger.open(IN_MEMORY))
    model: dict[str, list[list[float]]] = defaultdict(list)
    for who, (act, amount) in acts:
        history = model[who]
        if act == "write":
            desk.write(sap(amount), sender=who)
            history.append([amount])
        elif act == "amend" and history:
            desk.amend(sap(amount), sender=who)
            history[-1].append(amount)
        elif act == "undo":
            desk.undo(sender=who)
            if history:
                history[-1].pop()
                if not history[-1]:
                    history.pop()
        for person, texts in model.items():
            if texts:
                assert desk.sap(person) == sum(versions[-1] for versions in texts)
    desk.ledger.close()


@settings(max_examples=60, deadline=None)
@given(st.lists(gallons, min_size=1, max_size=6), gallons, st.lists(gallons, max_size=4))
def test_writing_amending_and_undoing_all_of_it_changes_no_sum(
    before: list[float], more: float, amended: list[float]
) -> None:
    desk = Desk(Ledger.open(IN_MEMORY))
    for amount in before:
        desk.write(sap(amount, brix=2.0))
    sums = desk.sums()
    desk.write(sap(more, brix=2.2))
    for amount in amended:
        desk.amend(sap(amount, brix=2.4))
    for _ in range(len(amended) + 1):
        desk.undo()
    assert desk.sums() == sums
    desk.ledger.close()
