"""Said where Pailtext has no answer yet: what is missing, and what it can do meanwhile."""

from __future__ import annotations

EXPORT = "Sending you your records is coming. They are kept safe until then."
