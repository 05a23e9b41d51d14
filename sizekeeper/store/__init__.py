"""The library file: entries with versions, backups and a lock, in SQLite."""
