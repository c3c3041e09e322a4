"""Writers of one drawing: SVG, PDF, and a text listing."""
