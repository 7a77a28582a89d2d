# errors: every key starts with error-.
