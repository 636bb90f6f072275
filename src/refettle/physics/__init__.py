"""Film, drying, moisture, air and abrasives: floats in, floats out; knows no wood and no product."""
