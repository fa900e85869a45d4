"""Whom to ask where a text can't tell: the adviser and the authority of one's region."""

from __future__ import annotations

from typing import Final

# The provinces and territories of Canada, by their postal codes.
_CANADA: Final = frozenset(
    {"AB", "BC", "MB", "NB", "NL", "NS", "NT", "NU", "ON", "PE", "QC", "SK", "YT"}
)


def extension(region: str | None) -> str:
    """Who advises makers for nothing: "your extension office" in the US."""
    return "your maple association" if in_canada(region) else "your extension office"


def agriculture(region: str | None) -> str:
    """Who makes and knows the rules for selling."""
    if region is None:
        return "your state or provincial agriculture department"
    if in_canada(region):
        return "your provincial agriculture ministry"
    return "your state agriculture department"


def in_canada(region: str | None) -> bool:
    """Whether the region is a province or territory of Canada; an unknown one is not."""
    return region in _CANADA
