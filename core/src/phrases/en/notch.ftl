# notch: every key starts with notch-.
