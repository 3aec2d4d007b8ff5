package meltkeeper.pipeline;

import java.util.Optional;
import java.util.OptionalDouble;
import meltkeeper.jam.Outlook;
import meltkeeper.ledger.Tally;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;

/**
 * How a hot end stands now.
 *
 * @param heardNanos when it was last heard, on the steady clock
 * @param celsius its temperature
 * @param targetCelsius the temperature asked for, 0 for off
 * @param heaterDuty 0 to 1
 * @param state what the printer does
 * @param job the job's name, empty for none
 * @param material as the printer spells it, empty when unknown
 * @param progress of the job, 0 to 1
 * @param total everything committed so far; grows with each commit and never falls
 * @param watch how the jam watch sees it
 * @param blindNanos printing time in which too little was told for the watch to say
 */
public record HotEndLive(
    HotEnd hotEnd,
    long heardNanos,
    OptionalDouble celsius,
    OptionalDouble targetCelsius,
    OptionalDouble heaterDuty,
    Optional<JobState> state,
    String job,
    String material,
    OptionalDouble progress,
    Tally total,
    Outlook watch,
    long blindNanos) {}
