package meltkeeper.life;

/** What maximum likelihood has to say of a table of lives. Closed: bad data are an answer too. */
public sealed interface Fit permits Maximum, Fit.NoMaximum {

  /** The likelihood has no maximum. */
  record NoMaximum(Reason reason) implements Fit {}

  /** Why there is none. */
  enum Reason {
    /** Nothing failed: the longer the life, the likelier the data. */
    NO_FAILURE("nothing has failed yet: the longer the life, the likelier the data"),
    /** The failures leave no scatter: the steeper the shape, the likelier the data. */
    NO_SCATTER("the failures leave no scatter: the steeper the shape, the likelier the data"),
    /** The covariate does not vary, so that its effect cannot be told from the life itself. */
    NO_CONTRAST("the covariate does not vary: its effect cannot be told from the life itself"),
    /** The likelihood rises without end in some other direction. */
    UNBOUNDED("the likelihood rises without end: too few failures to tell the parameters apart");

    private final String words;

    Reason(String words) {
      this.words = words;
    }

    /** The reason in words. */
    public String words() {
      return words;
    }
  }
}
