package meltkeeper.protocol.mapping;

import meltkeeper.protocol.Outlet;
import meltkeeper.protocol.Received;

/** Reads messages of one printer by compiled rules. Keeps its scratch: one thread at a time. */
sealed interface MessageReader permits JsonReader, PlainReader {

  /** Tells the readings of one message, or why there are none; never throws of its own. */
  void read(Received received, Outlet outlet);
}
