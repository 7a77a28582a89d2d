# cli: every key starts with cli-.
cli-draft = Typed and not yet accepted: { $draft }
cli-differs = This has changed since it was ticked.
cli-file = { $path }: { $why }
cli-no-folder = There is no folder for your data on this machine. Name a book with --book FILE.
cli-unknown = Nothing, or more than one thing, is called “{ $text }”. There is: { $known }.
cli-no-jobs = No houses yet. lapwright new-job "NAME" makes one; lapwright demo shows one.
cli-walls = { $count ->
    [one] { $count } wall
   *[other] { $count } walls
}
cli-archived = (archived)
cli-depends = { $count ->
    [0] Nothing later depends on it.
    [one] One later answer depends on it. Say --yes to take it back all the same:
   *[other] { $count } later answers depend on it. Say --yes to take it back all the same:
}
cli-reopened = Open again: { $question } (it was { $answer })
cli-undone = (taken back)
cli-nothing-to-undo = There is nothing to take back.
cli-copied = Copied and checked: { $path }
cli-check-good = The data is sound.
cli-check-bad = The data is not sound: { $why }
cli-set-aside = The book was damaged. It was set aside as { $path }.
cli-restored = Its newest good copy was taken instead: { $path }
cli-kept = Kept.
cli-rule-changed = Instead of { $default }, by { $signer }: { $reason }
