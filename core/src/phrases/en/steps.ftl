# Steps.
