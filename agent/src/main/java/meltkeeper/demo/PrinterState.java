package meltkeeper.demo;

import meltkeeper.protocol.JobState;

/**
 * A simulated printer at one moment.
 *
 * @param nanos since 1970
 * @param celsius of the hot end as its sensor has it
 * @param targetCelsius 0 when off
 * @param duty of the heater, 0 to 1
 * @param commandedMillimetres net total of filament asked for, since power-on
 * @param measuredMillimetres total of filament seen by the encoder
 * @param jobMillimetres net total of filament asked for, since the batch began
 * @param feedNewton force that the feed gear pushes with
 * @param fan of the part, 0 to 1
 * @param job the batch's name; empty when idle
 * @param material of the spool
 * @param progress of the batch, 0 to 1
 */
public record PrinterState(
    long nanos,
    double celsius,
    double targetCelsius,
    double duty,
    double commandedMillimetres,
    double measuredMillimetres,
    double jobMillimetres,
    double feedNewton,
    double fan,
    JobState state,
    String job,
    String material,
    double progress) {}
