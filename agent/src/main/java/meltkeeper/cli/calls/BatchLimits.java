package meltkeeper.cli.calls;

import java.util.function.ToDoubleFunction;
import meltkeeper.protocol.HotEnd;

/**
 * What calls for a batch go by.
 *
 * @param atRiskAbove a risk above this calls, 0 to 1
 * @param hotAboveCelsius above which a hot end is hot
 */
public record BatchLimits(double atRiskAbove, ToDoubleFunction<HotEnd> hotAboveCelsius) {}
