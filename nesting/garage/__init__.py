"""What has been cut of a plan, what is left of it, and what may still come of that."""
