"""From pages to bytes; a writer decides nothing."""
