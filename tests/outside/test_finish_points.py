"""Sources: OMAFRA, "Maple syrup density to please customers", 2013; University of Maine
Cooperative Extension, Bulletin 7036, and instrument charts (as quoted by others); Ohio State
University Extension, 2024; the trade's "seven degrees above water"."""

from __future__ import annotations

import pytest

from bot.reckoning.finish import finish_f, pan_brix, water_boils_f


def test_ontarios_point_lies_on_our_curve() -> None:
    """OMAFRA: 67 Brix at 4.2 C (7.56 F) above water. Within 0.05 F: 4.2 is rounded to 0.1 C,
    which is 0.09 F either way."""
    assert finish_f(212, 67.0) - 212 == pytest.approx(4.2 * 1.8, abs=0.05)


def test_ontarios_67_celsius_rise_is_nearly_67_brix_in_our_pan() -> None:
    """A tenth of a Brix, the same 0.05 F read the other way."""
    assert pan_brix(212 + 4.2 * 1.8, 212) == pytest.approx(67.0, abs=0.12)


# Rise in F, the Brix it is said to mean, the Brix of pure sucrose at that rise.
@pytest.mark.parametrize(
    ("rise_f", "said_brix", "sucrose_brix"),
    [
        (7.0, 66.0, 65.5),  # "syrup" in many bulletins, OSU Extension's 2024 log among them
        (7.1, 66.0, 65.7),  # University of Maine Bulletin 7036, instrument charts
        (7.5, 66.9, 66.8),  # common practice, no source: the rise we draw at for 66.9
    ],
)
def test_the_trades_rises_stop_a_little_short(
    rise_f: float, said_brix: float, sucrose_brix: float
) -> None:
    """The sources disagree with pure sucrose by up to half a Brix, all on the thin side; so we
    add 7.2 for 66.0, and a hydrometer decides. Sucrose to 0.06, half of the last place."""
    ours = pan_brix(212 + rise_f, 212)
    assert ours == pytest.approx(sucrose_brix, abs=0.06)
    assert ours < said_brix
    assert said_brix - ours <= 0.55


@pytest.mark.parametrize(
    ("rise_f", "brix"),
    [(1, 26), (2, 39), (3, 48), (4, 54), (5, 59), (6, 62.5), (6.5, 64.1), (7.25, 66.1), (8, 67.9)],
)
def test_the_pan_on_its_way(rise_f: float, brix: float) -> None:
    """Computed from Starzak and Peacock with IAPWS-95; to half a Brix below 60, where the
    figures are rounded to a whole one, and 0.1 above."""
    assert pan_brix(212 + rise_f, 212) == pytest.approx(brix, abs=0.5 if brix < 60 else 0.1)


def test_a_degree_near_the_finish_is_two_and_a_half_brix() -> None:
    """Computed; why a thermometer only brings one near."""
    assert pan_brix(212 + 7.9, 212) - pan_brix(212 + 6.9, 212) == pytest.approx(2.5, abs=0.1)


def test_a_tenth_of_an_inch_of_mercury_is_a_sixth_of_a_degree() -> None:
    """Computed: 0.17 F."""
    assert water_boils_f(30.0) - water_boils_f(29.9) == pytest.approx(0.17, abs=0.005)
