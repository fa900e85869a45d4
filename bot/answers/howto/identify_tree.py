"""How to tell a maple, and which maple: by twig and bud in winter, by leaf in summer."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.known import Known
from bot.answers.howto.seasons import in_leaf
from bot.answers.howto.told import Told
from bot.answers.howto.whom import extension

SOURCES: Final = (
    "Ohio State University Extension, Buckeye Yard and Garden onLine: sugar, Norway, red and"
    " silver maple in winter; mark trees while you are certain of them",
    "Ohio State University, dendrology pages: twigs of maple and ash",
    "Pennsylvania Department of Forests and Waters, Common Trees of Pennsylvania: buds, twigs"
    " and leaves of red, silver and Norway maple",
    "Oregon State University, Landscape Plants: Norway and sugar maple compared",
    "from memory: dogwood and buckeye branch in pairs; leaflets and twigs of box elder",
)

_BY_TWIG: Final = (
    "Look at the twigs: maples branch in pairs (so do ash, dogwood and buckeye). Sugar maple"
    " buds are brown and sharp, red maple's red and blunt."
)
_BY_LEAF: Final = (
    "Sugar maple: leaves in pairs, 5 lobes, edges smooth between the points. Red maple: small"
    " teeth all along. Mark your trees now, for winter."
)
_OTHERS: Final = (
    "Silver maple: leaf cut deep, white beneath, a broken twig smells. Norway: fat blunt buds,"
    " milky juice in a broken leaf stalk. Box elder: green twigs, leaf in 3 to 7 leaflets."
    " Ash: thick twigs, leaf in leaflets, tight diamond bark."
)


def answer(known: Known) -> Told:
    """By leaf while there are leaves, by twig and bud else; then the other way, the other
    maples, and what to do when in doubt."""
    first, other_way = (_BY_LEAF, _BY_TWIG) if in_leaf(known) else (_BY_TWIG, _BY_LEAF)
    doubt = (
        "Trust two signs, not one, and bark least: it changes with age. If they don't agree,"
        " leave the tree until it is in leaf and mark it then, or show a twig to"
        f" {extension(known.region)}. Don't boil the sap of a tree you are not sure of."
    )
    return Told(first, (other_way, _OTHERS, doubt))
