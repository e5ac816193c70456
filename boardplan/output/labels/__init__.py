"""Labels for cables, components and fuse places, on label stock."""
