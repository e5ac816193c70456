"""What a customer needs who builds battery trays and blocking before the crew comes."""
