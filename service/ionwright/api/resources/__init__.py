"""The operations, one module per resource: read the request, one call into the layers below, answer."""
