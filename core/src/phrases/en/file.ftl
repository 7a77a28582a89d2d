# Why a file could not be read or written, behind its path.
file-not-found = there is no such file or folder
file-permission = you are not allowed to do this there
file-exists = it is there already
file-folder = it is a folder; a file belongs here
file-no-folder = a part of this path is a file and no folder
file-folder-full = the folder is not empty
file-full = there is no room left on this disk
file-too-large = it is too large for this disk
file-read-only = this disk can only be read
file-name = this is no name for a file: it is too long, or has a character that no name may have
file-not-text = what is in it is not text
file-ends = it ends before it should
file-busy = another program is using it
file-memory = there is not enough memory
file-taken-no-more = the other side takes no more
file-other = the system says: { $why }
