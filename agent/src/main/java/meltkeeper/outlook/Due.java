package meltkeeper.outlook;

import java.time.Instant;
import java.util.Optional;
import meltkeeper.life.Estimate;
import meltkeeper.part.Moments;

/**
 * When a part reaches the advised age at the present duty.
 *
 * @param hours by the clock from now; 0 when it is past it
 * @param at the middle of what is believed; empty when it is more than ten years away
 * @param earliest it is later with a probability of 95 %
 * @param latest it is earlier with a probability of 95 %
 */
public record Due(
    double hours, Optional<Instant> at, Optional<Instant> earliest, Optional<Instant> latest) {

  /** The quantile of a standard normal at 95 %. */
  private static final double Z95 = 1.6448536269514722;

  /**
   * From hours at the mean duty: how days differ is joined to what is not known of ageing, both as
   * spreads of the logarithm.
   */
  static Due of(Estimate atMeanDuty, Duty duty, long nowNanos) {
    Instant now = Moments.instant(nowNanos);
    double middle = atMeanDuty.p50();
    if (!(middle > 0)) {
      return new Due(0, Optional.of(now), Optional.of(now), Optional.of(now));
    }
    double days = Z95 * duty.spreadOver(middle / 24);
    double shorter = Math.hypot(days, Math.log(middle / Math.max(atMeanDuty.p5(), 1e-9)));
    double longer = Math.hypot(days, Math.log(atMeanDuty.p95() / middle));
    return new Due(
        middle,
        duty.after(now, middle),
        duty.after(now, middle * Math.exp(-shorter)),
        duty.after(now, middle * Math.exp(longer)));
  }
}
