"""What is known of woods, films, cleaners, removers, tools, tests and faults: one sourced fact a row."""

from refettle.knowledge.knowledge import Knowledge, label_class
from refettle.knowledge.rows import FactRow, Identity, Property, SourceRow

__all__ = ["FactRow", "Identity", "Knowledge", "Property", "SourceRow", "label_class"]
