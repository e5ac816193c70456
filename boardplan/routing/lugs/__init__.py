"""How lugs lie: their place on a terminal, stacked on a stud, a link bar in their stead."""
