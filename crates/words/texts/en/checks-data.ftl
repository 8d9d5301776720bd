## not-known

not-known-what = Of { $of } the { $properties } { $properties ->
    [one] is
   *[other] are
} not known.
