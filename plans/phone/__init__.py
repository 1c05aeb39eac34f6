"""The phone page: what each of its screens says and draws, before it is written."""
