"""Benchmarks, run by hand; they print ratios taken in one run."""
