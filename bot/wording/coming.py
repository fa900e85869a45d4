"""Said where Pailtext has no answer yet: what is missing, and what it can do meanwhile."""

from __future__ import annotations

NO_FORECAST = "I have no forecast here yet, so I will not guess. I keep the tally meanwhile."
EXPORT = "Sending you your records is coming. They are kept safe until then."
