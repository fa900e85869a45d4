"""Places: from what somebody texts ("05843", "K0G 1J0", "near Hardwick, Vermont") to a point on
the map, with the state or province whose law holds there and the clock that its walls show.

Everything is looked up in data that comes with the packages zipcodes (United States) and
pypostalcode (Canada): nothing is asked over the network.
"""

from __future__ import annotations

from bot.places.finding import candidates, find, warm
from bot.places.place import Place

__all__ = ["Place", "candidates", "find", "warm"]
