"""From files to a job: job files, part lists, spreadsheets."""
