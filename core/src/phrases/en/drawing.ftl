# drawing: every key starts with drawing-.
