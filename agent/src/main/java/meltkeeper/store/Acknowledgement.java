package meltkeeper.store;

/** Somebody has seen to an episode: no more reminders, and no action that was still to come. */
public record Acknowledgement(long atNanos, String by) {}
