# amounts: every key starts with amounts-.
