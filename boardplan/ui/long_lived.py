"""Long-lived: keeps Python's search for unused objects short, so that it never holds up the hand on the mouse.

A large job is some hundred thousand objects that stay as long as it is open; to look through all of them takes
a fifth of a second, in the middle of a drag.
"""

import gc


def settle() -> None:
    """Throw away what is unused by now, and leave the rest out of every later search."""
    gc.unfreeze()  # what stayed from the job before may be unused
    gc.collect()
    gc.freeze()
