# screens: every key starts with screen-.
