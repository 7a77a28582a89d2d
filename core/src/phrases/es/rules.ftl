# rules: every key starts with rule-.
