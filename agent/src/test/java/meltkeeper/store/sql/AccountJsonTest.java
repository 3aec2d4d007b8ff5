package meltkeeper.store.sql;

import static meltkeeper.store.StoreFixture.HERON;
import static meltkeeper.store.StoreFixture.MORNING;
import static meltkeeper.store.StoreFixture.SECOND;
import static meltkeeper.store.StoreFixture.hot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeMap;
import meltkeeper.ledger.Account;
import meltkeeper.ledger.Credits;
import meltkeeper.ledger.Grid;
import meltkeeper.ledger.Ledger;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Exposure;
import meltkeeper.protocol.JobState;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import meltkeeper.store.Commit;
import meltkeeper.store.Store;
import meltkeeper.store.StoreException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class AccountJsonTest {

  @TempDir Path directory;

  @Test
  void newAccount_comesBackUnchanged() throws Exception {
    assertComesBack(Account.opened(HERON));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {21, 22, 23, 24})
  void accountAfterAnyReadings_comesBackUnchanged(long seed) throws Exception {
    Random random = new Random(seed);
    Ledger ledger = new Ledger(Limits.DEFAULT);
    Account account = Account.opened(HERON);
    long now = MORNING;
    for (int i = 0; i < 300; i++) {
      now += random.nextLong(-2 * SECOND, 5 * SECOND);
      Credits credits = new Credits(HERON, Grid.PLAIN);
      account = ledger.step(account, anyReading(random, now, i), credits).account();
      account = account.credited(credits.sum());
      assertComesBack(account);
    }
    assertThat(account.total().exposure().hotNanos()).isPositive();
  }

  private static Reading anyReading(Random random, long now, int number) {
    Sample sample = Sample.timed(HERON, now, MORNING + number * SECOND);
    return switch (random.nextInt(6)) {
      case 0 -> new Reading.JobStatus(sample, anyOf(random, JobState.values()));
      case 1 -> new Reading.FilamentCommanded(sample, random.nextDouble(1e5));
      case 2 -> new Reading.FilamentMeasured(sample, random.nextDouble(1e5));
      case 3 -> new Reading.HotEndTarget(sample, random.nextInt(250));
      default -> new Reading.HotEndTemperature(sample, 100 + random.nextDouble(200));
    };
  }

  private static JobState anyOf(Random random, JobState[] states) {
    return states[random.nextInt(states.length)];
  }

  private static void assertComesBack(Account account) throws SQLException {
    assertThat(AccountJson.read(HERON, AccountJson.written(account))).isEqualTo(account);
  }

  /** Everything that an account may be made of. */
  record Everything(
      double nan,
      double infinite,
      double tiny,
      long least,
      Optional<JobState> state,
      Optional<String> none,
      OptionalLong some,
      OptionalLong noNumber,
      List<Exposure> list,
      Map<String, Long> map,
      NavigableMap<Integer, Long> bands,
      Nested nested) {}

  record Nested(boolean yes, JobState state) {
    boolean isNo() {
      return !yes;
    }

    long getTwo() {
      return 2;
    }
  }

  @Test
  void everySortOfComponent_comesBackUnchanged() throws Exception {
    Everything everything =
        new Everything(
            Double.NaN,
            Double.NEGATIVE_INFINITY,
            Double.MIN_VALUE,
            Long.MIN_VALUE,
            Optional.of(JobState.PRINTING),
            Optional.empty(),
            OptionalLong.of(-1),
            OptionalLong.empty(),
            List.of(Exposure.of(-3, 1).plus(Exposure.of(237, 2)), Exposure.NONE),
            Map.of("a", 1L),
            new TreeMap<>(Map.of(-5, 1L, 215, 2L)),
            new Nested(true, JobState.PAUSED));

    String json = AccountJson.written(everything, HERON);

    assertThat(AccountJson.read(Everything.class, HERON, json)).isEqualTo(everything);
    // Only the components themselves, none of the methods that look like properties.
    assertThat(json).contains("\"nested\":{\"yes\":true,\"state\":\"PAUSED\"}");
  }

  @Test
  void accountOfAnotherShape_isRefused() throws Exception {
    String json = AccountJson.written(Account.opened(HERON));
    for (String broken :
        List.of(
            json.replace("\"total\"", "\"sum\""),
            json.replaceFirst("\"targetNanos\":-?\\d+", "\"targetNanos\":null"),
            json.replaceFirst("\"targetNanos\":-?\\d+,", ""),
            json.replaceFirst("\"targetNanos\":", "\"unknown\":1,\"targetNanos\":"),
            json.substring(0, json.length() / 2),
            json + "{}",
            "null",
            "")) {
      assertThatThrownBy(() -> AccountJson.read(HERON, broken))
          .as(broken)
          .isInstanceOf(SQLException.class)
          .hasMessageContaining("the account of hot end heron is ");
    }
  }

  @Test
  void storeWithAnUnreadableAccount_namesTheHotEnd() throws Exception {
    Path file = directory.resolve("shop.db");
    try (Store store = Stores.open("jdbc:sqlite:" + file)) {
      store.commit(
          new Commit(List.of(), List.of(), List.of(Account.opened(HERON).credited(hot(215, 1)))));
      RawFile.execute(file, "UPDATE account SET state = '{\"total\":1}'");

      assertThatThrownBy(store::accounts)
          .isInstanceOf(StoreException.class)
          .hasMessageStartingWith(
              "store "
                  + file
                  + ": could not read the accounts: what it holds is unreadable (the"
                  + " account of hot end heron is unreadable")
          .hasMessageContaining("put a backup in its place");
    }
  }
}
