# Lines of the done list: what was done, one message a kind of answer.
done-answered = { $question } { $answer }
done-cleared = { $question } (taken out)
done-undo = Taken back: { $what }
done-removed = Removed: { $what }
