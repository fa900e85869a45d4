"""A clause: items of a text that are said together, with what they do and how they are meant."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from bot.reading.items import Item


@dataclass(slots=True)
class Clause:
    """items: its items. sentence: number of its sentence. tags: what its own words do;
    frame: those, or the tags of the clause that it goes on from. on: the day it speaks of,
    None for the day it was sent; ahead: that day is still to come. question, plan, negated:
    how it is meant; carried: a plan of the clause before holds for it. kept: what it tells of
    went into a store, and not on the ground. joint: the sign or word before it. by_mark: it
    asks by its question mark alone. said: what its items do, each by itself; sorts: what sorts of
    items it has; places: where among them each stands, by its id. aside: it only compares with
    another day. each_word: the words of its text, those of phrases by themselves. spent: the deeds
    that it goes on from, where their own amount was told already."""

    items: list[Item]
    sentence: int
    joint: str = ""
    ended_by: str = ""
    tags: frozenset[str] = frozenset()
    frame: frozenset[str] = frozenset()
    on: date | None = None
    ahead: bool = False
    question: bool = False
    by_mark: bool = False
    aside: bool = False
    spent: frozenset[str] = frozenset()
    plan: bool = False
    carried: bool = False
    negated: bool = False
    hypothetical: bool = False
    tree: str | None = None
    lot: str | None = None
    own_tree: bool = False
    kept: bool = False
    bucket_before: bool = False
    sentence_tags: frozenset[str] = frozenset()
    word_texts: list[str] | None = field(default=None, compare=False)
    said: frozenset[str] = frozenset()
    sorts: frozenset[str] = field(default=frozenset(), compare=False)
    places: dict[int, int] = field(default_factory=dict, compare=False)
    roles: dict[int, str] = field(default_factory=dict, compare=False)
    text: str = field(default="")
    each_word: frozenset[str] = field(default=frozenset(), compare=False)

    def __post_init__(self) -> None:
        self.sorts = frozenset([item.sort for item in self.items])
        self.said = frozenset().union(*[item.tags for item in self.items])
        self.places = {id(item): at for at, item in enumerate(self.items)}

    def has(self, *tags: str) -> bool:
        """Does one of its own words do one of these?"""
        return not self.tags.isdisjoint(tags)

    def about(self, *tags: str) -> bool:
        """The same, or of the clause that it goes on from."""
        return not self.frame.isdisjoint(tags)

    def near(self, *tags: str) -> bool:
        """The same, of any clause of its sentence."""
        return not self.sentence_tags.isdisjoint(tags)

    def gathers(self) -> bool:
        """Does one of its own words surely gather (hauled, collected; not got, ran)?"""
        return any("GATHER" in item.tags and "WEAK" not in item.tags for item in self.items)

    def holds(self, *sorts: str) -> bool:
        """Is one of its items of one of these sorts?"""
        return not self.sorts.isdisjoint(sorts)

    def of_sort(self, sort: str) -> list[Item]:
        """Its items of this sort."""
        return [item for item in self.items if item.sort == sort] if sort in self.sorts else []

    def first_of(self, sort: str) -> Item | None:
        """The first item of this sort."""
        return next(iter(self.of_sort(sort)), None)

    def free(self, *sorts: str) -> list[Item]:
        """Items of these sorts that no reading has taken yet."""
        if self.sorts.isdisjoint(sorts):
            return []
        return [item for item in self.items if item.sort in sorts and not item.used]

    def settle(self, item: Item, sort: str, unit: str) -> None:
        """Says of one of its items what sort it is after all, and in what unit."""
        item.sort, item.unit = sort, unit
        self.sorts = frozenset(each.sort for each in self.items)

    def first(self, tag: str) -> Item | None:
        """The first item whose word does this."""
        if tag not in self.said:
            return None
        return next((item for item in self.items if tag in item.tags), None)

    def following(self, item: Item, count: int = 2) -> list[Item]:
        """The items right after this one, which is one of the clause's. Raises KeyError."""
        at = self.places[id(item)] + 1
        return self.items[at : at + count]

    def preceding(self, item: Item, count: int = 2) -> list[Item]:
        """The items right before this one, nearest first."""
        at = self.places[id(item)]
        return self.items[at - count if at > count else 0 : at][::-1]

    def spoken(self) -> str:
        """The whole clause as it was said, its trees and lots named as such."""
        return " ".join(
            f"tree {item.text}"
            if item.sort == "tree"
            else f"{item.text} lot"
            if item.sort == "lot" and not item.text.endswith("lot")
            else item.text
            for item in self.items
        )

    def words(self) -> list[str]:
        """The texts of its words."""
        if self.word_texts is None:
            self.word_texts = [item.text for item in self.of_sort("word")]
        return self.word_texts
