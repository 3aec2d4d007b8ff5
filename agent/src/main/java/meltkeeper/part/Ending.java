package meltkeeper.part;

import java.util.Locale;

/** How a part's life stands, as statistics see it. Closed. */
public sealed interface Ending {

  /** The word used in commands and files: {@code jam}, {@code still-fitted}. */
  String word();

  /** It reached its end. */
  record Failed(Because because) implements Ending {
    public Failed {
      if (!because.isFailure()) {
        throw new IllegalArgumentException(because.word() + " is no failure");
      }
    }

    @Override
    public String word() {
      return because.word();
    }
  }

  /** It was alive when last seen: right-censored. */
  record Censored(Why why) implements Ending {
    @Override
    public String word() {
      return why.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

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

  /** The ending of a part that was taken off because of that, through its own fault. */
  static Ending of(Because because) {
    return switch (because) {
      case JAM, WORN -> new Failed(because);
      case PRECAUTION -> new Censored(Why.PRECAUTION);
      case INSPECTION -> new Censored(Why.INSPECTION);
    };
  }
}
