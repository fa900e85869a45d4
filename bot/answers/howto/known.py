"""What a how-to answer may know of the person who asks."""

from __future__ import annotations

from dataclasses import dataclass

from bot.wording.style import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """What is known of the person, and the month in which they ask.

    `month` is 1 to 12, by their own calendar. `region` is the two-letter code of a US state or
    Canadian province. `bit_in` is the diameter of the bit they drill with, in inches; `taps`
    those set this season; `species` the kinds of tree they have named, such as "red maple".
    All measures are American; `units` says how the person is spoken to. None: not known.
    Raises ValueError for a month that is none.
    """

    month: int
    region: str | None = None
    units: Units = "us"
    bit_in: float | None = None
    taps: int | None = None
    bucket_gallons: float | None = None
    water_boils_f: float | None = None
    elevation_ft: float | None = None
    species: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if not 1 <= self.month <= 12:
            raise ValueError(f"Month is {self.month}, but should be 1 to 12")
