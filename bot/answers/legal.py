"""How a density stands to the law of the place that is asked about; no certainty is promised."""

from __future__ import annotations

from bot import figures
from bot.answers.asked import Asked
from bot.reckoning.law import LegalDensity, legal_density, region_named
from bot.wording import finish as wording


def law_of(asked: Asked) -> LegalDensity:
    """The law of the place that the question names, else of their own."""
    region = region_named(asked.text)
    return asked.known.law if region is None else legal_density(region)


def verdict(law: LegalDensity, brix: float) -> str:
    """How a density stands to the law, in a sentence."""
    judged = law.judge(brix)
    if judged == "too thin":
        return wording.thin(law.name, law.min_brix, law.min_brix - brix)
    if judged == "too thick" and law.max_brix is not None:
        return wording.thick(law.name, law.max_brix)
    if brix > figures.CRYSTALS_BRIX:
        return wording.heavy(law.name, law.min_brix)
    return wording.done(law.name, law.min_brix)
