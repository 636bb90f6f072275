"""What the trade talks about, as frozen values: pieces, surfaces, films, steps, findings."""
