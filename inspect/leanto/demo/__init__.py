"""The invented demo building."""
