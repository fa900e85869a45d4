"""Said where Pailtext has no answer yet: what is missing, and what it can do meanwhile."""

from __future__ import annotations

NO_FORECAST = "I have no forecast here yet, so I will not guess. I keep the tally meanwhile."
BOIL_PLAN = "Boil plans are coming. For now: ask how much so far, or when is it syrup."
TAP_PLAN = "Plans for tapping are coming; for now I keep count of your taps."
EXPORT = "Sending you your records is coming. They are kept safe until then."
HOWTO = "How-to answers are coming. Your state's extension office has good ones until then."
