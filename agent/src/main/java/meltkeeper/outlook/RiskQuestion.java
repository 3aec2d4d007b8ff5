package meltkeeper.outlook;

import java.util.Optional;

/**
 * Whether a batch gets through.
 *
 * @param atMost a risk that the shop will not go beyond, above 0 and below 1
 */
public record RiskQuestion(String printer, Batch batch, Optional<Double> atMost) {}
