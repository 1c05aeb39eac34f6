"""From a job to a layout; one method per file behind one protocol."""
