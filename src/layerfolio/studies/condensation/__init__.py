"""Moisture in the assembly: monthly balance, surface, two periods, and what would turn the answer."""
