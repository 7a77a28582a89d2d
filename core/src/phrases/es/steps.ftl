# steps: every key starts with step-.
