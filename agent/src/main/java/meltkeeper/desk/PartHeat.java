package meltkeeper.desk;

import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;

/**
 * A part and everything that it has been through, what came before the ledger included.
 *
 * @param tally over all its stays on hot ends
 */
public record PartHeat(Part part, Tally tally) {}
