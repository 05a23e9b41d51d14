"""Choose the size to cut from a multi-size sewing pattern, by ease, region by region."""

__version__ = "0.1.0"
