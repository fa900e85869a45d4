"""What a place is."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Place:
    """A place where trees may stand.

    name: the town, as the data spells it ("Hardwick"), or the province where no more is known.
    region: the two-letter code of the state or province. country: "US" or "CA".
    zone: the IANA name of its time zone.
    latitude, longitude: degrees north and east, None where only the province is known.
    """

    name: str
    region: str
    country: str
    zone: str
    latitude: float | None = None
    longitude: float | None = None

    @property
    def is_partial(self) -> bool:
        """True where only the province is known: enough for its law and its clock, but not for
        a forecast."""
        return self.latitude is None or self.longitude is None
