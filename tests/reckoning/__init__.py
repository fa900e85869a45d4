"""The arithmetic by itself: worked examples, properties, and what is refused."""
