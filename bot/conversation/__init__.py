"""The conversation: a text comes in, it is understood and kept, and an answer goes out."""

from __future__ import annotations

from bot.conversation.talk import Conversation
from bot.conversation.turn import FindPlace, FoundPlace, LikelyPlaces, Read, Senses, Settle

__all__ = ["Conversation", "FindPlace", "FoundPlace", "LikelyPlaces", "Read", "Senses", "Settle"]
