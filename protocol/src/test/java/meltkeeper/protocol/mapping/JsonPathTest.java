package meltkeeper.protocol.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import meltkeeper.protocol.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pointers, and the one pass that follows many of them. */
class JsonPathTest {

  private static final JsonFactory JSON = JsonDialect.factory(MappingDecoder.MAX_PAYLOAD_BYTES);
  private static final ObjectMapper TREES = new ObjectMapper(JSON);

  /** Source: RFC 6901, section 5. */
  private static final String EXAMPLE =
      """
      {
        "foo": ["bar", "baz"],
        "": 0,
        "a/b": 1,
        "c%d": 2,
        "e^f": 3,
        "g|h": 4,
        "i\\\\j": 5,
        "k\\"l": 6,
        " ": 7,
        "m~n": 8
      }
      """;

  /** Source: RFC 6901, section 5. */
  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '`',
      ignoreLeadingAndTrailingWhitespace = false,
      value = {
        "``,an object",
        "/foo,a list",
        "/foo/0,bar",
        "/,0.0",
        "/a~1b,1.0",
        "/c%d,2.0",
        "/e^f,3.0",
        "/g|h,4.0",
        "/i\\j,5.0",
        "/k\"l,6.0",
        "/ ,7.0",
        "/m~0n,8.0",
      })
  void pointer_ofTheStandard_findsWhatItSays(String pointer, String value) throws IOException {
    assertThat(found(EXAMPLE, pointer).text()).isEqualTo(value);
  }

  /** Source: RFC 6901, section 4: no leading zeros, and - is beyond the last element. */
  @ParameterizedTest
  @ValueSource(strings = {"/foo/2", "/foo/00", "/foo/01", "/foo/-", "/foo/+1", "/foo/1.0", "/foo/"})
  void pointer_toNoElement_findsNothing(String pointer) throws IOException {
    assertThat(found(EXAMPLE, pointer).isEmpty()).isTrue();
  }

  @Test
  void digitsAndDash_inAnObject_areKeys() throws IOException {
    assertThat(found("{\"0\":1,\"-\":2,\"01\":3}", "/0").number()).isEqualTo(1);
    assertThat(found("{\"0\":1,\"-\":2,\"01\":3}", "/-").number()).isEqualTo(2);
    assertThat(found("{\"0\":1,\"-\":2,\"01\":3}", "/01").number()).isEqualTo(3);
  }

  /** Source: RFC 6901, section 4: ~1 is turned into / first, so that ~01 becomes ~1. */
  @Test
  void escapes_areUndoneInOrder() {
    assertThat(JsonPath.of("/~01").tokens()).containsExactly("~1");
    assertThat(JsonPath.of("/~1~0/").tokens()).containsExactly("/~", "");
    assertThat(JsonPath.of("").tokens()).isEmpty();
    assertThat(JsonPath.of("/~01/a~1b/")).hasToString("/~01/a~1b/");
  }

  @ParameterizedTest
  @CsvSource({
    "hotend.now, 'a JSON Pointer: empty, or / before each key', write /hotend/now",
    "/a~2, ~ only before 0 or 1, write ~0 for ~ and ~1 for /",
    "/a~, ~ only before 0 or 1, write ~0 for ~ and ~1 for /",
  })
  void text_thatIsNoPointer_isToldWithTheRemedy(String text, String allowed, String mend) {
    assertThat(JsonPath.fault(text)).contains(Fault.of("at", text, allowed, mend));
    assertThatThrownBy(() -> JsonPath.of(text))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(allowed);
  }

  @Test
  void keyTwiceInAnObject_theLastOneCountsWithAllBelowIt() throws IOException {
    assertThat(found("{\"a\":1,\"a\":2}", "/a").number()).isEqualTo(2);
    assertThat(found("{\"a\":{\"b\":1},\"a\":{}}", "/a/b").isEmpty()).isTrue();
    assertThat(found("{\"a\":{\"b\":1},\"a\":5}", "/a/b").isEmpty()).isTrue();
    assertThat(found("{\"a\":1,\"a\":null}", "/a").isEmpty()).isTrue();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void onePass_overAnyDocument_agreesWithTheTree(long seed) throws IOException {
    Random random = new Random(seed);
    for (int i = 0; i < 1_000; i++) {
      String document = RandomJson.document(random);
      Map<JsonPath, Cell> cells = new HashMap<>();
      for (int count = random.nextInt(6); count >= 0; count--) {
        cells.put(RandomJson.path(random), new Cell(random.nextBoolean()));
      }
      fill(document, cells);

      JsonNode tree = TREES.readTree(document);
      cells.forEach((path, cell) -> checkSame(document, path, cell, tree.at(path.toString())));
    }
  }

  private static void checkSame(String document, JsonPath path, Cell cell, JsonNode node) {
    String what = path + " in " + document;
    if (node.isMissingNode() || node.isNull()) {
      assertThat(cell.isEmpty()).as(what).isTrue();
    } else if (node.isContainerNode()) {
      assertThat(cell.isScalar()).as(what).isFalse();
    } else if (node.isNumber()) {
      assertThat(cell.number()).as(what).isEqualTo(node.doubleValue());
    } else {
      assertThat(cell.isScalar()).as(what).isTrue();
      assertThat(cell.text()).as(what).isEqualTo(node.asText());
    }
  }

  private static Cell found(String document, String pointer) throws IOException {
    Cell cell = new Cell(false);
    fill(document, Map.of(JsonPath.of(pointer), cell));
    return cell;
  }

  private static void fill(String document, Map<JsonPath, Cell> cells) throws IOException {
    PathTree tree = PathTree.of(cells);
    for (String each : List.of("{\"a\":{\"b\":[1]}}", document)) {
      try (JsonParser in = JSON.createParser(each)) {
        assertThat(tree.fill(in)).isTrue();
      }
    }
  }
}
