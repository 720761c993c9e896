"""The chemistry of electrolysis: pure, typed, deterministic; nothing here knows about curricula or HTTP."""
