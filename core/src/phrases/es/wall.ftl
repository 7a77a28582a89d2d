# wall: every key starts with wall-.
