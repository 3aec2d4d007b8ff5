package meltkeeper.jam.sim;

/**
 * What really happened in an episode.
 *
 * @param onsetSeconds when the fault began; infinite for none
 * @param stallSeconds end of the first minute of feeding with under a tenth of what was asked for;
 *     infinite for never
 * @param printingSeconds in all
 * @param idealSeconds when a CUSUM that knows the onset would have alarmed; infinite for never
 * @param meltingDuty mean share of the heater's watts that melting took while it printed in health
 */
public record Truth(
    double onsetSeconds,
    double stallSeconds,
    double printingSeconds,
    double idealSeconds,
    double meltingDuty) {}
