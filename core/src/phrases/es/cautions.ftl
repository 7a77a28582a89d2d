# cautions: every key starts with caution-.
