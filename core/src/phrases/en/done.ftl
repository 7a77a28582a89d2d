# Lines of the done list: what was done, one message a kind of answer.
done-answered = { $a } { $b }
done-cleared = { $a } (taken out)
done-undo = Taken back: { $a }
done-removed = Removed: { $a }
done-job-created = New house: { $a }
done-job-archived = Archived: { $a }
done-job-brought-back = Brought back: { $a }
done-step-done = { $a }: { $b } { $c }
done-step-skipped = { $a }: left out: { $b } { $c }
done-step-taken-back = { $a }: taken back: { $b } { $c }
done-newer = Something that a newer program wrote ({ $a })
done-already = This was taken back already.
done-rule-changed = Rule changed: { $a }: { $b } ({ $c })
done-rule-default = Rule back to its default: { $a }: { $b }
done-stock-added = New stock length: { $a } { $b }
done-wall-added = New wall: { $a }
done-penetration-same = Same finish and block as another one
