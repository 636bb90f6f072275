"""Refettle plans the refinishing of worn wooden furniture."""
