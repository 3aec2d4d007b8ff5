package meltkeeper.ledger;

import meltkeeper.protocol.HotEnd;

/** What the ledger must remember of a hot end between two readings. */
public record Account(HotEnd hotEnd, Tally total) {}
