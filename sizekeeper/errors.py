"""The errors of the user's world, each one sentence that names the file, cell or field."""


class SizekeeperError(Exception):
    """Something in the user's world is not as it should be; the message is a whole sentence for her."""


class LengthError(SizekeeperError):
    """A text that should be a length is not one."""


class ChartError(SizekeeperError):
    """A chart cannot be used as asked."""


class FitError(SizekeeperError):
    """A person and a pattern cannot be compared as asked."""


class ReadError(SizekeeperError):
    """A file cannot be read; the message names it."""


class StoreError(SizekeeperError):
    """The library file cannot be opened or written; the message names it."""


class StaleEntryError(StoreError):
    """The entry changed since it was read; the edit is kept and offered as a copy."""


class PlanError(SizekeeperError):
    """An alteration cannot be worked out as asked."""


class ReportError(SizekeeperError):
    """A sheet cannot be made or written; the message names the file."""
