# cli: every key starts with cli-.
cli-draft = Typed and not yet accepted: { $draft }
cli-differs = This has changed since it was ticked.
cli-file = { $path }: { $why }
cli-no-folder = There is no folder for your data on this machine. Name a book with --book FILE.
cli-unknown = Nothing, or more than one thing, is called “{ $text }”. There is: { $known }.
