"""Small exact optimisation: plain data in and out; the only package that talks to CP-SAT."""
