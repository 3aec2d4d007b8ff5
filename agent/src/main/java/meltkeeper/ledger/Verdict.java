package meltkeeper.ledger;

/** What became of a reading. */
public enum Verdict {
  /** It counts. */
  TAKEN,
  /** It is older than the last one that counts. */
  LATE,
  /** It was told before. */
  DUPLICATE,
  /** A broker had kept it: it sets the state, and credits nothing. */
  RETAINED
}
