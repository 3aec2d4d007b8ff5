package meltkeeper.web.page;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import meltkeeper.desk.PartChange;
import meltkeeper.desk.RefusedException;
import meltkeeper.desk.ToldAct;
import meltkeeper.desk.ToldAct.Verb;
import meltkeeper.protocol.Fault;
import meltkeeper.web.view.AgentView;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What is done by tap: each form posts here, is done once, and leads back to where it stood. */
final class TapActs {

  private static final Logger LOG = LoggerFactory.getLogger(TapActs.class);

  /** Fields that belong to the form, not to the act. */
  private static final Set<String> OF_THE_FORM = Set.of("back", "mark");

  private final AgentView agent;
  private final Pages pages;
  private final DoneBook done;

  TapActs(AgentView agent, Pages pages, DoneBook done) {
    this.agent = agent;
    this.pages = pages;
    this.done = done;
  }

  void serve(RoutesConfig routes) {
    for (Verb verb : Verb.values()) {
      routes.post("/acts/" + verb.word(), request -> act(request, verb));
    }
    routes.post("/acts/take-back", this::takeBack);
    routes.post("/acts/acknowledge", this::acknowledge);
    routes.post("/acts/nothing", this::nothing);
  }

  private void act(Context request, Verb verb) {
    ObjectNode json = json(request);
    Texts texts = pages.frame(request, "").t();
    finish(
        request,
        () -> {
          PartChange change = ToldAct.read(verb.word(), json).done(agent.desk(), agent.when());
          LOG.info("page: {}", change.done());
          List<String> notes = new ArrayList<>(change.notes());
          switch (verb) {
            case FIT, REMOVE, SWAP -> notes.add(texts.say("caution.hot"));
            case CLEAN -> {
              notes.add(texts.say("caution.hot"));
              notes.add(texts.say("caution.eyes"));
            }
            case ADD, RETIRE, BLAME, UNDO -> {}
          }
          return new DoneBook.Outcome(change.done(), notes, Optional.of(change.undo()));
        });
  }

  /** A form's fields as an act is told: numbers and truth values are what they say they are. */
  private static ObjectNode json(Context request) {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    request
        .formParamMap()
        .forEach(
            (name, values) -> {
              String value = values.isEmpty() ? "" : values.get(0);
              if (OF_THE_FORM.contains(name) || value.isBlank()) {
                return;
              }
              switch (name) {
                case "hot_end" -> json.put(name, number(name, value).intValue());
                case "restores" -> json.put(name, number(name, value) / 100);
                case "not_this_part" -> json.put(name, value.equals("true"));
                default -> json.put(name, value);
              }
            });
    return json;
  }

  private static Double number(String name, String value) {
    if (!value.matches("[0-9]{1,6}(\\.[0-9]{1,6})?")) {
      throw new RefusedException(List.of(Fault.of(name, value, "a number")));
    }
    return Double.valueOf(value);
  }

  private void takeBack(Context request) {
    String id = field(request, "done");
    DoneBook.Done before =
        done.find(id)
            .orElseThrow(
                () ->
                    new RefusedException(
                        List.of(
                            Fault.of(
                                "done",
                                id,
                                "one of the last things done by tap",
                                "take it back on the part's own view"))));
    finish(
        request,
        () -> {
          PartChange change = agent.desk().swaps().takeBack(before.undo().orElseThrow());
          LOG.info("page: {}", change.done());
          return new DoneBook.Outcome(change.done(), change.notes(), Optional.empty());
        });
  }

  private void acknowledge(Context request) {
    String alert = field(request, "alert");
    Texts texts = pages.frame(request, "").t();
    finish(
        request,
        () -> {
          agent.desk().alerts().acknowledge(alert, texts.say("act.by-page"), agent.nowNanos());
          return new DoneBook.Outcome(texts.say("act.acknowledged"), List.of(), Optional.empty());
        });
  }

  private void nothing(Context request) {
    String episode = field(request, "episode");
    Texts texts = pages.frame(request, "").t();
    finish(
        request,
        () -> {
          agent.desk().questions().nothing(episode);
          return new DoneBook.Outcome(texts.say("act.nothing"), List.of(), Optional.empty());
        });
  }

  private void finish(Context request, java.util.function.Supplier<DoneBook.Outcome> act) {
    String mark =
        Optional.of(field(request, "mark")).filter(m -> !m.isBlank()).orElseGet(DoneBook::mark);
    DoneBook.Done now = done.once(mark, act);
    request.redirect(
        Addresses.with(Addresses.back(field(request, "back")), "done", now.id()),
        HttpStatus.SEE_OTHER);
  }

  private static String field(Context request, String name) {
    return Optional.ofNullable(request.formParam(name)).orElse("");
  }
}
