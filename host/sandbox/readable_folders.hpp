// Which folders of the file system a confined process can open files in.
#pragma once

namespace flutebook::sandbox {

/// Lets this thread, and all threads that it starts, open files only to read, and only in the folders of the libraries
/// that the process has loaded and in those of the system's libraries: not the files of other processes in /proc, nor
/// those of the user. Descriptors stay valid. Cannot be undone. Does nothing where the system (before Linux 5.13)
/// cannot do this.
void allow_folders_of_libraries();

}  // namespace flutebook::sandbox
