"""What leaves for the workshop: templates, schedules, lists."""
