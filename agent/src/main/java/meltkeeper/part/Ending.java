package meltkeeper.part;

/** How a part's life stands, as statistics see it. Closed. */
public sealed interface Ending {

  /** It reached its end. */
  record Failed(Because because) implements Ending {
    public Failed {
      if (!because.isFailure()) {
        throw new IllegalArgumentException(because.word() + " is no failure");
      }
    }
  }

  /** It was alive when last seen: right-censored. */
  record Censored(Why why) implements Ending {}

  /** Why a life was not seen to its end. */
  enum Why {
    /** Removed as a precaution. */
    PRECAUTION,
    /** Removed to be looked at. */
    INSPECTION,
    /** Jammed or worn through no fault of its own. */
    EXCUSED,
    /** Thrown away while still good. */
    RETIRED,
    /** On a printer now. */
    STILL_FITTED,
    /** Never fitted, or waiting on the shelf. */
    ON_SHELF
  }
}
