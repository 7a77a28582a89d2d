# siding: every key starts with siding-.
