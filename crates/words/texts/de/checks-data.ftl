## not-known

not-known-what = Nicht bekannt von { $of }: { $properties }.
