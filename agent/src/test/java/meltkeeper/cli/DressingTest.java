package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Optional;
import meltkeeper.desk.PartHeat;
import meltkeeper.ledger.Tally;
import meltkeeper.metrics.ShownPart;
import meltkeeper.part.Because;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.protocol.HotEnd;
import org.junit.jupiter.api.Test;

class DressingTest {

  private static final HotEnd HERON = HotEnd.first("heron");

  private static PartHeat part(String id, PartEvent... events) {
    return new PartHeat(
        Part.added(id, "liner", Optional.empty(), 0).with(List.of(events)), Tally.NONE);
  }

  private static PartEvent fitted(long atNanos) {
    return new PartEvent.Fitted(atNanos, HERON, Optional.empty());
  }

  private static PartEvent removed(long atNanos) {
    return new PartEvent.Removed(atNanos, Because.PRECAUTION, false);
  }

  @Test
  void parts_takenOffLongAgo_areNotShown() {
    List<PartHeat> heats =
        List.of(
            part("L-001"),
            part("L-002", fitted(100), removed(500)),
            part("L-003", fitted(100), removed(501)),
            part("L-004", fitted(100)));

    assertThat(Dressing.parts(heats, 500))
        .extracting(ShownPart::id, ShownPart::isFitted)
        .containsExactly(tuple("L-003", false), tuple("L-004", true));
  }
}
