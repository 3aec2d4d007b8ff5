package meltkeeper.web.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static meltkeeper.desk.Bench.HERON;
import static meltkeeper.desk.Bench.IBIS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meltkeeper.testing.RealParts;
import meltkeeper.web.ServedShop;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The page in a real Chromium: seen, tapped, typed, and read by a screen reader's rules. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
final class BrowserTest {

  private static final int PHONE = 360;
  private static final double PATIENCE_MILLIS = 60_000;
  private static final List<String> VIEWS =
      List.of("/", "/printers/heron", "/parts", "/parts/L-001", "/kinds", "/batch", "/alerts");

  @TempDir private Path folder;

  private Optional<Playwright> playwright = Optional.empty();
  private Optional<Browser> browser = Optional.empty();
  private ServedShop shop = new ServedShop();
  private String liner = "";

  @BeforeAll
  void open() {
    PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE_MILLIS);
    Path chromium = RealParts.find("chromium");
    Playwright made =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    playwright = Optional.of(made);
    browser =
        Optional.of(
            made.chromium()
                .launch(
                    new BrowserType.LaunchOptions()
                        .setExecutablePath(chromium)
                        .setArgs(List.of("--no-sandbox", "--disable-gpu"))));
  }

  @AfterAll
  void end() {
    browser.ifPresent(Browser::close);
    playwright.ifPresent(Playwright::close);
    shop.close();
  }

  @BeforeEach
  void aShop() {
    shop.close();
    shop = new ServedShop();
    shop.bench.hot(HERON, "2026-03-10T00:00:00Z", 10, 225);
    liner = shop.bench.add("liner");
    shop.bench.fit(liner, HERON, "2026-03-09T00:00:00Z");
    shop.hear(HERON, "plant-labels-3", "PLA", ServedShop.CLEAR);
    shop.hear(IBIS, "drawer-organisers-7", "PETG", ServedShop.CLEAR);
  }

  @AfterEach
  void closePages() {
    browser.orElseThrow().contexts().forEach(BrowserContext::close);
  }

  private Page page(Browser.NewContextOptions options, String path) {
    Page page = browser.orElseThrow().newContext(options).newPage();
    page.navigate(shop.address(path));
    return page;
  }

  private Page page(String path) {
    return page(new Browser.NewContextOptions(), path);
  }

  @Test
  void overview_showsANarrowingPrinter_withoutBeingLoadedAgain() {
    Page page = page("/");
    assertThat(page.locator(".hot-end").first().locator("h2")).hasText("heron");
    page.evaluate("window.before = true");

    shop.hear(IBIS, "drawer-organisers-7", "PETG", ServedShop.NARROWING);

    assertThat(page.locator(".hot-end").first().locator("h2")).hasText("ibis");
    assertThat(page.locator(".hot-end.narrowing"))
        .containsText("fed 83 % of what was asked over the last 400 mm");
    assertThat(page.locator(".hot-end.narrowing")).containsText("it may stall in 4 to 11 min");
    assertThat(page.evaluate("window.before")).isEqualTo(true);
  }

  @Test
  void swapByTap_movesCredits_andUndoRestoresThem() {
    Page page = page("/printers/heron");
    page.getByText("The liner was swapped").click();
    page.getByText("It jammed").first().click();
    page.locator("input[name=at]").first().fill("2026-03-10T04:00Z");
    page.getByText("Note the swap").click();

    assertThat(page.locator("[role=status]")).containsText(liner + " was taken off because of jam");
    assertThat(shop.bench.hours(liner)).isCloseTo(4, within(1e-9));

    page.locator("#undo").click();

    assertThat(page.locator("[role=status]")).containsText("taken back");
    assertThat(shop.bench.hours(liner)).isCloseTo(10, within(1e-9));
  }

  @Test
  void batchCheck_takesAnUploadedFile() throws java.io.IOException {
    Path file =
        Files.writeString(
            folder.resolve("box.gcode"), "M109 S225\n" + "G1 X6000 E1 F60\nG1 X0 E2\n".repeat(3));
    Page page = page("/batch");
    page.locator("#printer").selectOption("heron");
    page.locator("#gcode").setInputFiles(file);
    page.locator("#check").click();

    assertThat(page.locator("#answer")).containsText("10.0 h");
    assertThat(page.locator("#answer")).containsText(liner);
  }

  @Test
  void keyboardAlone_swapsAPart() {
    Page page = page("/");
    page.keyboard().press("Tab");
    assertThat(page.locator(".skip")).isFocused();
    tabTo(page, "open-heron");
    page.keyboard().press("Enter");
    page.waitForURL("**/printers/heron");
    while (!focused(page).equals("SUMMARY")) {
      page.keyboard().press("Tab");
    }
    page.keyboard().press("Enter");
    while (!focused(page).equals("BUTTON")) {
      page.keyboard().press("Tab");
    }
    page.keyboard().press("Enter");

    assertThat(page.locator("[role=status]")).containsText(liner + " was taken off");
    org.assertj.core.api.Assertions.assertThat(shop.bench.store.parts()).hasSize(2);
  }

  private static void tabTo(Page page, String id) {
    for (int i = 0; i < 30; i++) {
      page.keyboard().press("Tab");
      if (page.evaluate("document.activeElement.id").equals(id)) {
        return;
      }
    }
    throw new AssertionError("the keyboard does not reach " + id);
  }

  private static String focused(Page page) {
    return String.valueOf(page.evaluate("document.activeElement.tagName"));
  }

  @Test
  void focus_outlivesALiveUpdate() {
    Page page = page("/");
    page.locator("#open-ibis").focus();

    shop.hear(IBIS, "drawer-organisers-7", "PETG", ServedShop.NARROWING);

    assertThat(page.locator(".hot-end.narrowing")).isVisible();
    assertThat(page.locator("#open-ibis")).isFocused();
  }

  @ParameterizedTest
  @EnumSource(
      value = ColorScheme.class,
      names = {"LIGHT", "DARK"})
  void everyView_onANarrowPhone_fits_andBreaksNoRuleOfAccessibility(ColorScheme scheme) {
    shop.hear(IBIS, "drawer-organisers-7", "PETG", ServedShop.NARROWING);
    List<String> broken = new ArrayList<>();
    for (String view : VIEWS) {
      Page page =
          page(
              new Browser.NewContextOptions().setViewportSize(PHONE, 740).setColorScheme(scheme),
              view);
      org.assertj.core.api.Assertions.assertThat(
              page.evaluate("document.documentElement.scrollWidth"))
          .as("width of " + view)
          .isEqualTo(PHONE);
      for (Rule rule : new AxeBuilder(page).analyze().getViolations()) {
        broken.add(view + ": " + rule.getId() + " (" + rule.getImpact() + ") " + rule.getNodes());
      }
      page.context().close();
    }
    org.assertj.core.api.Assertions.assertThat(broken).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/printers/heron", "/parts", "/kinds"})
  void withoutScripts_everythingCanBeRead(String view) {
    Page page = page(new Browser.NewContextOptions().setJavaScriptEnabled(false), view);

    assertThat(page.locator("h1")).isVisible();
    assertThat(page.locator("main")).not().hasText("");
  }

  @Test
  void policyOfContent_isBrokenByNothingOfOurs() {
    Page page = browser.orElseThrow().newContext().newPage();
    List<String> complaints = new ArrayList<>();
    page.onConsoleMessage(message -> complaints.add(message.type() + ": " + message.text()));
    page.onPageError(complaints::add);
    for (String view : VIEWS) {
      page.navigate(shop.address(view));
    }

    org.assertj.core.api.Assertions.assertThat(complaints).isEmpty();
  }
}
