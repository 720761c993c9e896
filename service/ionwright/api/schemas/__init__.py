"""The shapes of requests and responses, from which the OpenAPI document is made."""
