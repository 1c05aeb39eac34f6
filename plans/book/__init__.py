"""The book of leftovers: what stands in the garage from job to job."""
