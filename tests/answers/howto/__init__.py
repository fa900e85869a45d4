"""The how-to answers."""
