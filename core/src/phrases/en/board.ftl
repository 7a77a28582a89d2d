# board: every key starts with board-.
