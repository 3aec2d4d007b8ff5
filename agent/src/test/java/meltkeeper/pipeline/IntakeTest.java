package meltkeeper.pipeline;

import static meltkeeper.pipeline.Heard.HERON;
import static meltkeeper.pipeline.Heard.nanos;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import meltkeeper.ledger.Limits;
import meltkeeper.ledger.Tally;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.protocol.Rejected;
import meltkeeper.store.MemoryStore;
import meltkeeper.store.StoreException;
import org.junit.jupiter.api.Test;

class IntakeTest {

  private final MemoryStore store = new MemoryStore();

  private Intake intake() {
    return new Intake(Heard.DECODER, hotEnd -> Limits.DEFAULT, store);
  }

  private static void plateau(Intake intake, int fromSeconds, int untilSeconds) {
    for (int at = fromSeconds; at <= untilSeconds; at += 2) {
      intake.accept(Heard.celsius(at, 220));
    }
  }

  private long storedNanos(double fromSeconds, double untilSeconds) {
    return store.tally(HERON, nanos(fromSeconds), nanos(untilSeconds)).exposure().hotNanos();
  }

  private void fit(String id, double atSeconds) {
    Part part =
        new Part(
            id,
            "liner",
            Optional.empty(),
            0,
            Optional.empty(),
            List.of(new PartEvent.Fitted(nanos(atSeconds), HERON, Optional.empty())));
    assertThat(store.saveParts(store.revision(), List.of(part))).isTrue();
  }

  @Test
  void commits_storeEveryCreditOnce() {
    Intake intake = intake();
    plateau(intake, 0, 600);
    intake.commit();
    plateau(intake, 602, 1000);
    intake.commit();
    intake.commit();

    assertThat(storedNanos(0, 2000)).isEqualTo(nanos(1000));
    assertThat(store.accounts().get(0).total().exposure().hotNanos()).isEqualTo(nanos(1000));
    assertThat(intake.live().commits()).isEqualTo(2);
  }

  @Test
  void restart_goesOnFromTheLastCommit() {
    Intake first = intake();
    plateau(first, 0, 600);
    first.commit();
    plateau(first, 602, 610);

    Intake second = intake();
    plateau(second, 612, 700);
    second.commit();

    assertThat(storedNanos(0, 2000)).isEqualTo(nanos(700));
  }

  @Test
  void counters_showOnlyWhatIsCommitted() {
    Intake intake = intake();
    plateau(intake, 0, 100);
    assertThat(intake.live().hotEnds().get(0).total()).isEqualTo(Tally.NONE);

    intake.commit();
    assertThat(intake.live().hotEnds().get(0).total().exposure().hotNanos()).isEqualTo(nanos(100));
  }

  @Test
  void swapInTheMiddleOfABucket_isCutExactlyWhileTheReadingsAreKnown() {
    Intake intake = intake();
    intake.accept(Heard.celsius(300, 20));
    plateau(intake, 320, 400);
    fit("L-2", 391);
    intake.noticeFittings();
    plateau(intake, 402, 420);
    intake.commit();

    // Ramp: 20 to 220 in 20 s crosses 150 after 13 s, so that the hot time begins at 313.
    assertThat(storedNanos(0, 391)).isEqualTo(nanos(391 - 313));
    assertThat(storedNanos(391, 1000)).isEqualTo(nanos(420 - 391));
    assertThat(storedNanos(0, 1000)).isEqualTo(nanos(420 - 313));
  }

  @Test
  void swapEnteredLongAfterwards_sharesItsBucketInProportion() {
    Intake first = intake();
    first.accept(Heard.celsius(300, 20));
    plateau(first, 320, 600);
    first.commit();

    Intake second = intake();
    fit("L-2", 450);
    second.noticeFittings();
    plateau(second, 602, 610);
    second.commit();

    assertThat(storedNanos(300, 450)).isEqualTo(nanos(600 - 313) / 2);
    assertThat(storedNanos(300, 450) + storedNanos(450, 1000)).isEqualTo(nanos(610 - 313));
  }

  @Test
  void storeFailure_losesNothing() {
    FailingStore failing = new FailingStore(store);
    Intake intake = new Intake(Heard.DECODER, hotEnd -> Limits.DEFAULT, failing);
    plateau(intake, 0, 100);
    failing.fail(true);
    assertThatThrownBy(intake::commit).isInstanceOf(StoreException.class);
    plateau(intake, 102, 200);
    failing.fail(false);
    intake.commit();

    assertThat(storedNanos(0, 1000)).isEqualTo(nanos(200));
  }

  @Test
  void trouble_lastsUntilNothingWaitsForTheStore() {
    FailingStore failing = new FailingStore(store);
    Intake intake = new Intake(Heard.DECODER, hotEnd -> Limits.DEFAULT, failing);
    plateau(intake, 0, 100);
    failing.fail(true);
    assertThatThrownBy(intake::commit).hasMessage("the disk is full");
    intake.failed("the disk is full");

    intake.noticeFittings();
    intake.answered();
    assertThat(intake.live().trouble()).contains("the disk is full");

    failing.fail(false);
    intake.commit();
    intake.answered();
    assertThat(intake.live().trouble()).isEmpty();
  }

  @Test
  void message_withSeveralReadings_isCountedOnceAReason() {
    Intake intake = intake();
    intake.accept(Heard.celsius(10, 220));
    intake.accept(Heard.celsius(8, 220));
    intake.accept(Heard.text(12, "warm"));

    assertThat(intake.live().received()).isEqualTo(3);
    assertThat(intake.live().rejected())
        .containsOnly(
            java.util.Map.entry(Rejected.Reason.LATE, 1L),
            java.util.Map.entry(Rejected.Reason.NOT_A_NUMBER, 1L));
  }
}
