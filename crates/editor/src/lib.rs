//! The editor: tools as state machines, camera, selection and hit testing. It knows pointers and keys as plain values, never browser events, so that every gesture can be replayed in a test.
