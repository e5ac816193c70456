"""What is filled in when a job is put to work and handed over: fuses, torques, tests, settings, service."""
