# flashing: every key starts with flashing-.
