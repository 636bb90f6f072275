"""What the person's own work says of rates and chances: small models with a shared prior, exact where they can be."""
