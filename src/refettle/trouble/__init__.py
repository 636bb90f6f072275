"""Trouble: what people see, understood; causes ranked; the question that tells most."""
