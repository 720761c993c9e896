"""The vocabulary of discharge rules, applied to chemistry's competition."""
