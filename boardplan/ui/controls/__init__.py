"""Small controls that panels, dialogs and the canvas share."""
