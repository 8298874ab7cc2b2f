// Nothing of its own: it stands for the headers that all test programs share, precompiled.
