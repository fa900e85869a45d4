"""What one season of a sugarbush adds up to."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """A season in numbers. Gallons are US, Brix is percent of mass, dollars are US.

    sap_brix_mean: of the sap whose sugar was told, weighted by its sugar; None if none was.
    expected_brix: what the expectation reckons with: that mean, or the usual of sap
    (`brix_is_assumed`). expected_syrup_gallons: what the sap that was not poured out makes at
    `syrup_brix`, the least that the law allows where it is made.
    """

    season: int
    sap_gallons: float
    sap_records: int
    sap_brix_mean: float | None
    expected_brix: float
    brix_is_assumed: bool
    expected_syrup_gallons: float
    syrup_brix: float
    syrup_gallons: float
    syrup_records: int
    jars_gallons: float
    poured_out_gallons: float
    cost_dollars: float
    cords: float
    propane_lb: float

    @property
    def is_empty(self) -> bool:
        """True when nothing has been gathered, drawn or bottled yet."""
        return not (self.sap_records or self.syrup_records or self.jars_gallons)
