# saw: every key starts with saw-.
