# store: every key starts with store-.
