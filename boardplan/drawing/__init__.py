"""Pictures in millimetres, for screen and paper alike."""
