package meltkeeper.demo;

/**
 * A message for a broker.
 *
 * @param nanos when it is published, since 1970
 */
public record Message(long nanos, String topic, String payload) {}
