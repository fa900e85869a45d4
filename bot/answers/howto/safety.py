"""What can hurt people in sugaring."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import LEAD_SOLDER_BEFORE
from bot.answers.howto.known import Known
from bot.answers.howto.told import Told
from bot.answers.howto.whom import extension

SOURCES: Final = (
    "US EPA and Consumer Product Safety Commission, as quoted: carbon monoxide, no fire or"
    " burner indoors, alarms",
    "Michigan State University Extension: steam indoors loosens paper and paint",
    "Ohio State University Extension: drill with two hands, firm footing, not overhead",
    "University of Maine Cooperative Extension, Bulletin 7038, and OMAFRA, Best Production"
    " Practices: lead",
    "common practice, no source: fire, burns, ice, dead limbs, permission, raw sap, allergens,"
    " treated trees, road salt; cool water on a burn is from memory",
)


def answer(known: Known) -> Told:
    """Fumes, fire and burns first, with the number to call; then lead, sap, trees, woods."""
    first = (
        "Boil outdoors or in a vented shed. Never wood, charcoal or propane in a house, tent or"
        " shut garage: the fumes kill. Never leave the fire. Hot syrup sticks and burns. Hurt or"
        " dizzy: call 911."
    )
    fire = (
        "Fire: clear ground, spark guard, water at hand, ask your fire department if a burn"
        " permit is needed, and follow local codes. Gloves, boots, long ladle; children and pets"
        " well back. A burn: cool running water, and 911 or a doctor if it is more than small."
        " CO alarm where you boil."
    )
    lead = (
        f"Lead: metal soldered before {LEAD_SOLDER_BEFORE}, terne plate, brass and bronze may put"
        " lead in sap and syrup, and boiling does not take it out; children are hurt most. Test"
        f" old pails and pans with a kit, and ask {extension(known.region)}."
    )
    drinking = (
        "Raw sap is not pasteurized: boil it before you drink it, and give none raw to"
        " babies or people in weak health. Tell those who eat it of butter or"
        " milk used on foam, and of walnut sap (nut allergy)."
    )
    woods = (
        "Trees: none that were injected or sprayed, none in road salt or septic soak, and only"
        " with the owner's word, by a road or in a park too. Drill with two hands, feet firm, not"
        " overhead. Look up for dead limbs, down for ice."
    )
    return Told(first, (fire, lead, drinking, woods))
