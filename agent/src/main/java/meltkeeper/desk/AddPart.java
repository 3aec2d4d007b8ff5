package meltkeeper.desk;

import java.util.Optional;

/**
 * A part that is new to the shop.
 *
 * @param id the shop's own; empty for the next free one
 * @param variant make or material that tells it from others of its kind
 */
public record AddPart(String kind, Optional<String> id, Optional<String> variant) {}
