package meltkeeper.protocol.mapping;

/**
 * Where a message tells its own time.
 *
 * @param at the place in the payload
 * @param format how the time is written there
 */
public record TimeRule(JsonPath at, TimeFormat format) {}
