# cli: every key starts with cli-.
