# Lines of the done list: what was done, one message a kind of answer.
done-answered = { $a } { $b }
done-cleared = { $a } (taken out)
done-undo = Taken back: { $a }
done-removed = Removed: { $a }
done-job-created = New house: { $a }
done-job-archived = Archived: { $a }
done-job-brought-back = Brought back: { $a }
