"""Values and arithmetic: no Qt, no files, no clock. One idea a module."""
