package meltkeeper.life;

/**
 * One row of a life table for maximum likelihood. Closed.
 *
 * <p>{@code covariate} moves log life linearly (0 where there is none), {@code count} is how many
 * such units there were.
 */
public sealed interface Observation {

  double covariate();

  double count();

  /** Failed at an age known exactly, hours above 0. */
  record Failed(double hours, double covariate, double count) implements Observation {
    public Failed {
      checked(hours, covariate, count);
    }
  }

  /** Still alive at that age: right-censored, hours above 0. */
  record Survived(double hours, double covariate, double count) implements Observation {
    public Survived {
      checked(hours, covariate, count);
    }
  }

  /** Failed between two looks at it, hours, {@code after} above 0. */
  record Between(double after, double hours, double covariate, double count)
      implements Observation {
    public Between {
      checked(after, covariate, count);
      checked(hours - after, covariate, count);
    }
  }

  private static void checked(double hours, double covariate, double count) {
    if (!(hours > 0 && hours < Double.POSITIVE_INFINITY)
        || !Double.isFinite(covariate)
        || !(count > 0 && count < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "hours and counts are above 0 and a covariate is finite, not "
              + hours
              + ", "
              + count
              + " and "
              + covariate);
    }
  }
}
