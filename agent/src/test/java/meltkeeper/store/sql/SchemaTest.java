package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.IBIS;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.bucket;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import meltkeeper.jam.WatchState;
import meltkeeper.ledger.Account;
import meltkeeper.part.Because;
import meltkeeper.part.Ending;
import meltkeeper.part.Exposure;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.part.PriorPast;
import meltkeeper.store.Acknowledgement;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Episode;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;
import meltkeeper.store.Subject;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SchemaTest {

  @TempDir Path directory;
  private Path file = Path.of("");

  @BeforeEach
  void nameTheFile() {
    file = directory.resolve("shop.db");
  }

  private Store open() {
    return Stores.open("jdbc:sqlite:" + file);
  }

  /** What the stored file of version 1 holds; {@code version-1.sqlite} is never written again. */
  private static final List<Part> PARTS_OF_VERSION_1 =
      List.of(
          new Part(
              "L-014",
              "liner",
              Optional.of("long"),
              MORNING,
              Optional.of(
                  new Part.PaperPast(
                      Exposure.of(225, 300), new Ending.Censored(Ending.Why.STILL_FITTED))),
              List.of(
                  new PartEvent.Fitted(MORNING, HERON, Optional.of(new PriorPast(120, 60, 220))),
                  new PartEvent.Removed(MORNING + 5, Because.JAM, true),
                  new PartEvent.Cleaned(MORNING + 6, 0.7),
                  new PartEvent.Fitted(MORNING + 7, IBIS, Optional.empty()))));

  private static final AlertEntry ALERT_OF_VERSION_1 =
      new AlertEntry(
          new Alert(
              new Episode(AlertTopic.TOO_HOT, new Subject.OfHotEnd(HERON), MORNING),
              Alert.Phase.BEGAN,
              0,
              MORNING,
              "heron is too hot"),
          List.of(
              new Delivery(
                  "1a6a05743095", "phone", Delivery.State.DEAD, 3, MORNING + 5, "it answered 500")),
          Optional.of(new Acknowledgement(MORNING + 6, "the shop")));

  @Test
  void fileOfVersion1_opens_andHoldsWhatItHeld() throws Exception {
    try (InputStream stored = SchemaTest.class.getResourceAsStream("version-1.sqlite")) {
      Files.copy(Objects.requireNonNull(stored), file);
    }
    try (Store store = open()) {
      assertThat(store.parts()).isEqualTo(PARTS_OF_VERSION_1);
      assertThat(store.revision()).isEqualTo(1);
      assertThat(store.accounts()).extracting(Account::hotEnd).containsExactly(HERON, IBIS);
      assertThat(store.accounts().get(0).total()).isEqualTo(hot(215, 100).plus(hot(220, 50)));
      assertThat(store.accounts().get(0).lastCelsius()).hasValue(216.5);
      assertThat(store.buckets(HERON, 0, Long.MAX_VALUE))
          .containsExactly(bucket(HERON, 0, hot(215, 100)), bucket(HERON, 1, hot(220, 50)));
      assertThat(store.hasRecording("d1")).isTrue();
      assertThat(store.watches())
          .containsExactly(new WatchState(HERON, new TreeMap<>(Map.of("period", "2.5"))));
      assertThat(store.outbox().latest(9)).containsExactly(ALERT_OF_VERSION_1);
    }
  }

  @Test
  void newFile_saysWhoseItIsAndWhichVersion() throws Exception {
    open().close();

    assertThat(RawFile.rows(file, "PRAGMA user_version")).containsExactly("1");
    // "Melt" in ASCII, 4D 65 6C 74, as one number.
    assertThat(RawFile.rows(file, "PRAGMA application_id")).containsExactly("1298492532");
    assertThat(RawFile.rows(file, "PRAGMA journal_mode")).containsExactly("wal");
    assertThat(Migrations.known()).isEqualTo(1);
  }

  @Test
  void fileOfANewerProgram_isRefusedAndLeftAsItIs() throws Exception {
    open().close();
    RawFile.execute(file, "PRAGMA user_version = 7");
    byte[] before = Files.readAllBytes(file);

    assertThatThrownBy(this::open)
        .isInstanceOf(StoreException.class)
        .hasMessage(
            "store "
                + file
                + ": its schema is version 7, this program knows versions up to 1; install the"
                + " newer program that wrote it, or name another file");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void databaseOfAnotherProgram_isRefusedAndLeftAsItIs() throws Exception {
    RawFile.execute(file, "CREATE TABLE orders (id INTEGER)");
    byte[] before = Files.readAllBytes(file);

    assertThatThrownBy(this::open)
        .isInstanceOf(StoreException.class)
        .hasMessage(
            "store " + file + ": this database belongs to another program; name another file");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }
}
