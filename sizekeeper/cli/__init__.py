"""The terminal commands."""
