package meltkeeper.web;

import java.util.Optional;

/**
 * A part as the page shows it, ready to read.
 *
 * @param id the shop's own
 * @param kind liner, nozzle and so on
 * @param fittedOn the hot end where it is now; empty when it is nowhere
 * @param standing how its life stands, in words
 * @param hotHours above the hot threshold, over its life
 * @param hottestBand the band in which it spent most, empty for none
 * @param filamentMetres fed through it
 */
public record PartView(
    String id,
    String kind,
    Optional<String> fittedOn,
    String standing,
    String hotHours,
    Optional<String> hottestBand,
    String filamentMetres) {}
