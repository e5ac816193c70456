"""Files for other programs: drawings of a board for machines, a picture to send, all lists in one workbook."""
