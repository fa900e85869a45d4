"""The family of readings: one file a kind. A new kind is one file and one line in KINDS."""

from __future__ import annotations

from types import ModuleType

from bot.reading.kinds import (
    amend,
    boil,
    bucket_size,
    chat,
    cost,
    fuel,
    gear,
    help,
    helper,
    household,
    jars,
    join,
    pan_temp,
    place,
    poured_out,
    question,
    sap,
    sign,
    start,
    stop,
    store_temp,
    sugar,
    syrup,
    taps_pulled,
    taps_set,
    tree,
    undo,
    water_boils,
    wish,
)
from bot.reading.kinds.amend import Amend
from bot.reading.kinds.base import Reading
from bot.reading.kinds.boil import Boil
from bot.reading.kinds.bucket_size import BucketSize
from bot.reading.kinds.chat import Chat
from bot.reading.kinds.cost import Cost
from bot.reading.kinds.fuel import Fuel
from bot.reading.kinds.gear import Gear
from bot.reading.kinds.help import Help
from bot.reading.kinds.helper import Helper
from bot.reading.kinds.household import Household
from bot.reading.kinds.jars import Jar, Jars
from bot.reading.kinds.join import Join
from bot.reading.kinds.pan_temp import PanTemp
from bot.reading.kinds.place import Place
from bot.reading.kinds.poured_out import PouredOut
from bot.reading.kinds.question import Question
from bot.reading.kinds.sap import Sap
from bot.reading.kinds.sign import Sign
from bot.reading.kinds.start import Start
from bot.reading.kinds.stop import Stop
from bot.reading.kinds.store_temp import StoreTemp
from bot.reading.kinds.sugar import Sugar
from bot.reading.kinds.syrup import Syrup
from bot.reading.kinds.taps_pulled import TapsPulled
from bot.reading.kinds.taps_set import TapsSet
from bot.reading.kinds.tree import Tree
from bot.reading.kinds.undo import Undo
from bot.reading.kinds.water_boils import WaterBoils
from bot.reading.kinds.wish import Wish

FAMILY: tuple[ModuleType, ...] = (
    stop,
    start,
    help,
    join,
    household,
    wish,
    gear,
    undo,
    amend,
    question,
    helper,
    place,
    water_boils,
    pan_temp,
    store_temp,
    bucket_size,
    taps_pulled,
    taps_set,
    tree,
    cost,
    fuel,
    poured_out,
    jars,
    boil,
    syrup,
    sap,
    sugar,
    sign,
    chat,
)
"""Every kind, in the order in which they are let at a clause: the first to take has it."""

KINDS: tuple[type[Reading], ...] = tuple(
    cls
    for module in FAMILY
    for cls in vars(module).values()
    if isinstance(cls, type) and issubclass(cls, Reading) and cls.__module__ == module.__name__
)

__all__ = [
    "FAMILY",
    "KINDS",
    "Amend",
    "Boil",
    "BucketSize",
    "Chat",
    "Cost",
    "Fuel",
    "Gear",
    "Help",
    "Helper",
    "Household",
    "Jar",
    "Jars",
    "Join",
    "PanTemp",
    "Place",
    "PouredOut",
    "Question",
    "Reading",
    "Sap",
    "Sign",
    "Start",
    "Stop",
    "StoreTemp",
    "Sugar",
    "Syrup",
    "TapsPulled",
    "TapsSet",
    "Tree",
    "Undo",
    "WaterBoils",
    "Wish",
]
